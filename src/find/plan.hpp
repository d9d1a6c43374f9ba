// A loop while it is being made: stops that must be driven through, and the legs between them.
//
//   legs[0], stops[0], legs[1], …, stops[n-1], legs[n]
//
// Rules: a leg holds both its ends: the first begins at a start, the last ends at a goal, the
// others join the last vertex of one stop to the first of the next. A plan without stops has one
// leg, empty until it is filled. A stop is a candidate's path, or a single vertex to go round by.
#pragma once

#include <cstdint>
#include <vector>

#include "find/hunt.hpp"

namespace loopwright::find {

struct Stop {
  std::vector<Vertex> path;
  std::int32_t candidate = -1;  ///< row of hunt.candidates; -1: only a way round
  std::int32_t want = -1;       ///< that it is there for; -1: none
};

struct Plan {
  std::vector<Stop> stops;
  std::vector<std::vector<Vertex>> legs{1};

  /// All vertices in driving order.
  [[nodiscard]] std::vector<Vertex> vertices() const;
  /// Which of these each stop begins with.
  [[nodiscard]] std::vector<std::size_t> rows_of_stops() const;
};

/// Time of one leg: from the end of what is before it to the end of the first vertex after it; the
/// last one to the end of the drive. 0 for the empty leg of a plan without stops.
std::int64_t leg_ms(const Hunt& hunt, const Plan& plan, std::size_t leg);

/// Time of the whole plan without its stops; 0 when it is empty.
std::int64_t plan_ms(const Hunt& hunt, const Plan& plan);

/// The same with the stops for manoeuvres: what the minutes are for.
std::int64_t away_ms(const Hunt& hunt, const Plan& plan);

/// Where a leg begins and ends, as seeds for searches forwards and backwards.
std::vector<reach::LocalSeed> seeds_before(const Hunt& hunt, const Plan& plan, std::size_t leg);
std::vector<reach::LocalSeed> seeds_after(const Hunt& hunt, const Plan& plan, std::size_t leg);

/// Turning round at the end of a road is worse than three kilometres driven twice; milli-units. Ours.
constexpr std::int64_t turning_weight = 3000;
/// So is driving on round a roundabout where one has been all the way round: nobody can say "the tenth exit". Ours.
constexpr std::int64_t circling_weight = 3000;
/// Driving round a yard or a tiny block again weighs half a pass, so that it isn't done for nothing. Ours.
constexpr std::int64_t tiny_round_weight = 500;

/// How good a whole drive is against the wish.
struct Score {
  int missing = 0;    ///< passes, streets and junctions asked for and not driven
  int over_caps = 0;  ///< drives over a quiet street beyond its cap
  int unplaced = 0;   ///< planned stops without a place
  std::int64_t off_window_ms = 0;
  std::int64_t value = 0;  ///< milli-units
  int surplus = 0;         ///< passes beyond those asked for by number
  int turnings = 0;        ///< the car turned round where a road ends
  int circlings = 0;       ///< times round a roundabout beyond a whole one
  int tiny_rounds = 0;     ///< times round less than 200 m of other road
  int corners = 0;         ///< turns to the left or right: each is a row to be spoken
  std::int64_t ms = 0;
  [[nodiscard]] bool good() const { return missing == 0 && allowed(); }
  /// Good, and each planned stop has a place.
  [[nodiscard]] bool as_asked() const { return good() && unplaced == 0; }
  [[nodiscard]] bool allowed() const { return over_caps == 0 && off_window_ms == 0; }
  /// Value, less what turnings, circlings and tiny rounds weigh: by this one drive is better than another.
  [[nodiscard]] std::int64_t rating() const;
  /// Better: within the window and the caps, then fewer missing, then a higher rating; among loops of
  /// like rating those nearer to what was asked, with fewer corners (weights in plan.cpp).
  [[nodiscard]] bool better_than(const Score& other) const;
};

/// How often each dense piece is driven.
std::vector<int> drives_of_pieces(const Hunt& hunt, std::span<const Vertex> vertices);

/// What a drive passes, as far as its wish has to know.
std::vector<PlacePass> passes_on(const Hunt& hunt, const Drive& drive);

Score score(const Hunt& hunt, std::span<const Vertex> vertices);
Score score(const Hunt& hunt, const Plan& plan);

/// Corners of more than 45 degrees on a path.
int corners_on(const Hunt& hunt, std::span<const Vertex> path);

/// Where a path goes back on the stretch before. None is what a want for turn-in-road counts: that is a planned stop.
int turnings_on(const Hunt& hunt, std::span<const Vertex> path);

/// What a drive, taken stretch by stretch, goes round again.
class Circlings {
 public:
  void take(const road::Roads& roads, StretchId stretch);
  /// How often it comes back on a roundabout's ring to where it came onto it, without leaving it between.
  [[nodiscard]] int on_rings() const { return on_rings_; }
  /// How often it comes to a stretch again within 200 m, on no roundabout between.
  [[nodiscard]] int elsewhere() const { return elsewhere_; }
  /// Milli-units.
  [[nodiscard]] std::int64_t weight() const {
    return circling_weight * on_rings_ + tiny_round_weight * elsewhere_;
  }

 private:
  void take_on_ring(StretchId stretch);
  void take_off_ring(const road::Roads& roads, StretchId stretch);

  int on_rings_ = 0, elsewhere_ = 0;
  StretchId onto_ = {};            ///< the first stretch on the ring it is on; none: it is on none
  std::vector<StretchId> lately_;  ///< driven since the last ring, as far back as a round reaches
  double lately_m_ = 0;            ///< long together
};
Circlings circlings_on(const Hunt& hunt, std::span<const Vertex> path);

/// Count wants that passes leave unmet: how many each still needs.
std::vector<int> unmet(const Hunt& hunt, std::span<const PlacePass> passes);

}  // namespace loopwright::find
