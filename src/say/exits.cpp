// Method: on a ring, the roads that leave it at each of its nodes on the way driven, but for those that
// stay inside it; at a mini, those between the entry and ours in driving order.
#include "say/exits.hpp"

#include <algorithm>

namespace loopwright::say {
namespace {

class Ring {
 public:
  Ring(const Drive& drive, const Moment& moment)
      : drive_(drive), roads_(drive.roads()), moment_(moment), place_(place_of(moment)) {}

  [[nodiscard]] ExitSeen seen() const {
    ExitSeen seen;
    // What leaves at the entry leaves before one is on the ring.
    for (std::size_t i = moment_.entry + 1; i < moment_.exit; ++i) {
      const Junction there = junction_between(roads_, drive_.at(i), drive_.at(i + 1));
      for (const Arm& arm : there.others)
        if (arm.seen == Seen::road && !on_ring(arm.leaving) && !stays_inside(arm.leaving))
          seen.passed.push_back(arm.leaving);
    }
    seen.count = static_cast<int>(seen.passed.size()) + 1;
    if (!is_small_road(roads_, drive_.at(moment_.exit))) return seen;
    seen.small = !is_small_road(roads_, drive_.at(moment_.exit - 1));
    if (seen.small) seen.count = small_roads_passed() + 1;
    return seen;
  }

 private:
  [[nodiscard]] int small_roads_passed() const {
    int passed = 0;
    for (std::size_t i = moment_.entry + 1; i + 1 < moment_.exit; ++i)
      for (const Arm& arm : junction_between(roads_, drive_.at(i), drive_.at(i + 1)).others)
        if (is_small_road(roads_, arm.leaving) && may_enter(roads_, arm.leaving)) ++passed;
    return passed;
  }

  [[nodiscard]] bool on_ring(StretchId s) const {
    return (roads_.piece(s).flags & road::piece_flag::ring) != 0;
  }

  /// The road through the middle of a ring leads to its other side.
  [[nodiscard]] bool stays_inside(StretchId s) const {
    if (!place_.known()) return false;
    const auto nodes = roads_.nodes_of(place_);
    return std::find(nodes.begin(), nodes.end(), roads_.to_node(s)) != nodes.end();
  }

  [[nodiscard]] PlaceId place_of(const Moment& moment) const {
    for (const road::Chance& chance : roads_.chances_from(drive_.at(moment.entry)))
      if (chance.kind == moment.pass->kind && chance.exit == drive_.at(moment.exit))
        return chance.place;
    return {};
  }

  const Drive& drive_;
  const road::Roads& roads_;
  const Moment& moment_;
  PlaceId place_;
};

/// At a mini all roads meet at one node: those before ours, from the near side on.
ExitSeen seen_at_mini(const Drive& drive, const Moment& moment) {
  const road::Roads& roads = drive.roads();
  const bool drives_left = roads.info().region.side == Side::left;
  const Junction there = junction_between(roads, drive.at(moment.entry), drive.at(moment.exit));
  const bool back = there.exit == there.entry.back();
  ExitSeen seen;
  for (const Arm& arm : there.others) {
    const bool before =
        drives_left ? arm.angle_deg < there.angle_deg : arm.angle_deg > there.angle_deg;
    if (arm.seen == Seen::road && (before || back)) seen.passed.push_back(arm.leaving);
  }
  seen.count = static_cast<int>(seen.passed.size()) + 1;
  seen.small = is_small_road(roads, there.exit) && !is_small_road(roads, there.entry);
  if (seen.small) seen.count = -1;  // no number tells it
  return seen;
}

}  // namespace

ExitSeen exit_seen(const Drive& drive, const Moment& moment) {
  const bool mini = moment.kind == RowKind::mini;
  return mini ? seen_at_mini(drive, moment) : Ring(drive, moment).seen();
}

}  // namespace loopwright::say
