// 1. A rule's path is laid along the drive from the row that begins it: a "no" driven to its end, or
//    an "only" left after it binds, is a turn that may not be made at its hours.
// 2. Whether it binds is asked for the whole time at the turn.
#include <algorithm>

#include "loopwright/lanes/met.hpp"

namespace loopwright::lanes {

std::size_t turned_against(const road::Roads& roads, const wish::Loop& loop,
                           const road::TurnRule& rule, std::size_t first) {
  const auto path = roads.path_of(rule);
  std::size_t driven = 0;
  while (driven < path.size() && first + driven < loop.stretches.size() &&
         loop.stretches[first + driven].stretch == path[driven])
    ++driven;
  if (driven == 0) return 0;
  if (rule.only == 0) return driven == path.size() ? first + driven - 1 : 0;
  const bool bound = driven >= std::min<std::size_t>(2, path.size() - 1);
  const bool left = driven < path.size() && first + driven < loop.stretches.size();
  return bound && left ? first + driven : 0;
}

std::vector<TurnMet> turns_met(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<TurnMet> all;
  for (const road::TurnRule& rule : roads.turn_rules) {
    if (roads.text(rule.condition).empty()) continue;
    for (std::size_t first = 0; first < loop.stretches.size(); ++first) {
      const std::size_t at = turned_against(roads, loop, rule, first);
      if (at > 0) all.push_back({first, at, &rule});
    }
  }
  std::ranges::stable_sort(all, {}, &TurnMet::at);
  return all;
}

Passing at_turn(const wish::Loop& loop, const TurnMet& met, const hours::Setting& setting) {
  return {turning_into(loop, met.first + 1, setting).from, turning_into(loop, met.at, setting).to};
}

Said said_of(const TurnMet& met, const TimedDrive& drive) {
  const Passing when = at_turn(drive.loop, met, drive.setting);
  Clockwork clock(drive.roads, drive.setting);
  const bool free = clock.binds(*met.rule, when).in_force == hours::Tri::no;
  return {words_of(drive.roads, *met.rule), when, free ? "may be made" : "keep out", free};
}

}  // namespace loopwright::lanes
