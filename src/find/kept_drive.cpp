// Method:
//   1. The stretches of the loop are followed over the turns of the area; a state that can't be come to and left within the
//      wish at this start ends it, with what is in the way.
//   2. Stops are planned anew, and the drive is scored as any try of a search is.
//   3. One that is as asked is described, and nothing of it may be shut when it is there.
#include "loopwright/find/kept_drive.hpp"

#include <cstdint>
#include <string>

#include "find/clock_walls.hpp"
#include "find/describe.hpp"
#include "find/independent.hpp"
#include "find/plan.hpp"
#include "find/pull_ups.hpp"
#include "find/street_caps.hpp"
#include "find/ways_home.hpp"
#include "loopwright/lanes/timed_things.hpp"
#include "loopwright/wish/parts.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::find {
namespace {

/// Minutes with one decimal, or none when it is 0.
std::string tenths(std::int64_t ms, bool upwards) {
  constexpr std::int64_t ms_a_tenth = 6000;
  const std::int64_t all = (ms + (upwards ? ms_a_tenth - 1 : 0)) / ms_a_tenth;
  const std::string whole = std::to_string(all / 10);
  return all % 10 == 0 ? whole : whole + "." + std::to_string(all % 10);
}

class KeptSearch {
 public:
  KeptSearch(const Hunt& hunt, const wish::Loop& kept) : hunt_(hunt), kept_(kept) {}

  KeptDrive run() {
    if (!follow()) return {std::nullopt, why_};
    const Score now = score(hunt_, vertices_);
    if (!now.as_asked()) return {std::nullopt, why_not(now)};
    return described(now);
  }

 private:
  [[nodiscard]] std::string street(std::size_t row) const {
    return lanes::street_name(hunt_.ground.roads, kept_.stretches[row].stretch);
  }

  /// Step 1.
  bool follow() {
    std::optional<StateId> state;
    for (std::size_t row = 0; row < kept_.stretches.size(); ++row) {
      const StretchId stretch = kept_.stretches[row].stretch;
      state = row == 0 ? StateId{stretch.index()} : next_of(*state, stretch);
      if (!state) return refuse("the turn into " + street(row) + " isn't allowed any more");
      const Vertex vertex = hunt_.graph.vertex(*state);
      if (vertex == reach::LocalGraph::none) return refuse(why_out_of_reach(row));
      vertices_.push_back(vertex);
    }
    return true;
  }

  bool refuse(std::string why) {
    why_ = std::move(why);
    return false;
  }

  [[nodiscard]] std::optional<StateId> next_of(StateId from, StretchId to) const {
    const road::Roads& roads = hunt_.ground.roads;
    for (const road::Turn& turn : roads.turns_from(from)) {
      const auto row = static_cast<std::size_t>(&turn - roads.turns.data());
      if (roads.stretch_of(turn.to) == to && !hunt_.ground.costs.is_banned(row)) return turn.to;
    }
    return std::nullopt;
  }

  /// Why a row can't be driven by itself; empty when it may be.
  [[nodiscard]] std::string why_shut(std::size_t row) const {
    const Ground& ground = hunt_.ground;
    const StretchId stretch = kept_.stretches[row].stretch;
    const road::Piece& piece = ground.roads.piece(stretch);
    const bool quiet = (piece.flags & road::piece_flag::quiet) != 0;
    if (quiet && StreetCaps(ground.roads, ground.wish, ground.caps).most(stretch.piece()) == 0)
      return street(row) + " is driven often enough by the ledger";
    return ground.costs.may_drive(stretch)
               ? ""
               : street(row) + " is shut, kept off or avoided at that hour";
  }

  /// Why this row can't be come to: what is shut may lie before it or behind.
  [[nodiscard]] std::string why_out_of_reach(std::size_t row) const {
    for (std::size_t other = 0; other < kept_.stretches.size(); ++other)
      if (std::string why = why_shut(other); !why.empty()) return why;
    return street(row) + " can't be driven to and home from within the minutes at that hour";
  }

  [[nodiscard]] std::string why_not(const Score& now) const {
    if (now.over_caps > 0) return "quiet streets on it would be driven more often than they may be";
    if (now.off_window_ms > 0) return why_not_in_time(now);
    return now.missing > 0 ? "it hasn't all that is asked at that hour"
                           : "a planned stop has no place on it at that hour";
  }

  /// In tenths of a minute away from the door, rounded so that what is too long or too short also reads so.
  [[nodiscard]] std::string why_not_in_time(const Score& now) const {
    const std::int64_t stops_ms = 1000 * wish::kept_for_stops_s(hunt_.ground.wish);
    const bool too_long = now.ms > hunt_.high_ms;
    return "it would take " + tenths(now.ms + stops_ms, too_long) + " min then; " +
           tenths(hunt_.low_ms + stops_ms, true) + " to " +
           tenths(hunt_.high_ms + stops_ms, false) + " are asked for";
  }

  /// Step 3.
  [[nodiscard]] KeptDrive described(const Score& now) const {
    const Ground& ground = hunt_.ground;
    const Drive drive = hunt_.drive_of(vertices_);
    wish::Loop loop = describe(ground, drive);
    const auto breaches = lanes::breaches_on(ground.roads, loop, ground.setting);
    if (!breaches.empty()) return {std::nullopt, breaches.front().why};
    add_pull_ups(ground, drive, loop);
    WaysHome(hunt_).add_to(drive, loop);
    loop.certificate.value = now.value;
    std::optional<wish::Shortfall> shortfall;
    tell_without_place(ground, drive, loop, shortfall);
    add_independent(ground.roads, ground.wish, loop, shortfall);
    if (shortfall) return {std::nullopt, "it hasn't all that is asked at that hour"};
    return {std::move(loop), {}};
  }

  const Hunt& hunt_;
  const wish::Loop& kept_;
  std::vector<Vertex> vertices_;
  std::string why_;
};

}  // namespace

KeptDrive kept_drive(const road::Roads& roads, const wish::Wish& wish, const wish::Loop& loop,
                     const hours::Setting& setting) {
  if (wish::is_in_parts(wish) || !wish.through.empty() || !wish.minutes)
    return {std::nullopt, "a lesson in parts, or a drive of your own, is laid out by its times"};
  const ClockWalls walls(roads, wish, setting);
  const Ground ground(roads, wish, setting, walls);
  if (ground.starts.empty() || ground.goals.empty())
    return {std::nullopt, "the door's own road is shut, kept off or avoided at that hour"};
  const Hunt hunt(ground);
  return KeptSearch(hunt, loop).run();
}

}  // namespace loopwright::find
