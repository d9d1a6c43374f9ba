// What lies where, while streets are added to a county one by one.
//
//   Ground ground(county, around);  const auto hit = ground.first_hit(a, b);
//   const Spot place = ground.would_share(hit->line, hit->at);  ground.share(hit->line, place);
//
// Rules: looks at the lines and areas that come near to the outline it was made for; a line that is
// added or shared through it is known at once, one that is put into the Drawing otherwise isn't.
// Why: squares of segments in a hash map; a segment stays entered as it was when a Spot is put into
// it, for the Spot lies on it to the centimetre.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <unordered_map>
#include <vector>

#include "county/drawing.hpp"

namespace loopwright::county {

/// How important a way for cars is, for who may join whom: service 0, residential 1, unclassified 2,
/// tertiary 3, secondary 4, primary 5, trunk and motorway 6; -1 when it isn't for cars.
int rank(const Line& line);

/// A place on a line that something else comes near to or crosses.
struct Hit {
  std::size_t line = 0;  ///< Ground::no_line for the edge of an area
  Spot at;
  double away_m = 0;
  double angle = 0;  ///< of the line there
};

class Ground {
 public:
  static constexpr std::size_t no_line = static_cast<std::size_t>(-1);
  using Match = std::function<bool(const Line&)>;

  /// Knows what comes within 400 m of the box round an outline.
  Ground(Drawing& county, std::span<const Spot> outline);

  [[nodiscard]] Drawing& county() const { return *county_; }
  [[nodiscard]] const Line& line(std::size_t number) const { return county_->lines[number]; }

  /// Adds a line to the drawing; gives its number.
  std::size_t add(Line line);
  void add(Area area);

  /// Where a-b first meets anything, other than within a metre of a.
  [[nodiscard]] std::optional<Hit> first_hit(Spot a, Spot b) const;
  /// All segments within reach, each by its nearest place; some may come twice.
  [[nodiscard]] std::vector<Hit> around(Spot place, double reach_m) const;
  /// The nearest place of a line that matches.
  [[nodiscard]] std::optional<Hit> nearest(Spot place, double reach_m, const Match& match) const;
  /// Whether nothing comes within reach of a place.
  [[nodiscard]] bool clear(Spot place, double reach_m) const {
    return around(place, reach_m).empty();
  }
  /// Whether a place lies in an area that streets keep out of.
  [[nodiscard]] bool in_area(Spot place) const;

  /// The Spot that a join at a place of a line will use: one that is there within 4 m, or the place.
  [[nodiscard]] Spot would_share(std::size_t line, Spot at) const;
  /// Puts a Spot that would_share gave into the line.
  /// Why not any place: the nearest place of a line to a rounded Spot may be another centimetre.
  void share(std::size_t line, Spot at);
  /// Arms of ways for cars at a Spot.
  [[nodiscard]] int arms(Spot at) const;
  /// Metres to the nearest junction or sign other than at the place itself, or the reach.
  [[nodiscard]] double junction_off(Spot at, double reach_m) const;

 private:
  struct Segment {
    std::size_t line;
    Spot a;
    Spot b;
  };
  template <typename Visit>
  void visit(Spot low, Spot high, Visit&& visit) const;
  void enter(std::size_t line, Spot a, Spot b);
  void count(Spot at, int arms);
  void mark(Spot at);

  Drawing* county_;
  std::unordered_map<Spot, std::vector<Segment>, SpotHash> squares_;
  std::unordered_map<Spot, std::vector<Spot>, SpotHash> marks_;  // junctions and signs, by square
  std::unordered_map<Spot, int, SpotHash> arms_;
  std::vector<std::size_t> areas_;  // that came through add or were there, by number
};

}  // namespace loopwright::county
