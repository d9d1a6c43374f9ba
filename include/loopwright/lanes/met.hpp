// The rules with hours that a drive meets on its streets and at its turns, told for the minutes it is
// there.
//
//   for (const RuleMet& met : rules_met(roads, loop, road::Timed::limit))
//     print(met_words(met, {roads, loop, setting}));
//
// Rules: the loop is resolved. Consecutive stretches under one rule are one meeting. Bus gates are
// told by bus_lanes_on, not here: ask for access or limits.
// Why here: the list of `lanes` and the route card say it in the same words.
#pragma once

#include <string>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::lanes {

/// A drive, and what its hours are read by. Rules: all three outlive it.
struct TimedDrive {
  const road::Roads& roads;
  const wish::Loop& loop;
  const hours::Setting& setting;
};

/// Some rows of a drive under one rule. Valid while the roads are.
struct RuleMet {
  Rows rows;
  const road::TimedRule* rule = nullptr;
};

/// In driving order.
std::vector<RuleMet> rules_met(const road::Roads& roads, const wish::Loop& loop, road::Timed about);

/// One turn of a drive that a rule with hours forbids at its hours. Valid while the roads are.
struct TurnMet {
  std::size_t first = 0, at = 0;  ///< rows: where the rule's path begins, and the one turned into
  const road::TurnRule* rule = nullptr;
};

/// In driving order.
std::vector<TurnMet> turns_met(const road::Roads& roads, const wish::Loop& loop);
/// The row by which a drive that begins the rule's path in row `first` does what the rule forbids at
/// its hours; 0: it doesn't. An "only" binds once the path's own turn begins.
std::size_t turned_against(const road::Roads& roads, const wish::Loop& loop,
                           const road::TurnRule& rule, std::size_t first);
/// When a drive is at such a turn: the sign stands where the path begins to turn, and binds until the
/// last turn is made.
Passing at_turn(const wish::Loop& loop, const TurnMet& met, const hours::Setting& setting);

/// What is said of something met, in parts, so that several meetings of one rule can be told as one.
struct Said {
  std::string rule;     ///< "shut Monday to Friday, eight till nine"
  Passing when;         ///< on the clock of the area
  std::string verdict;  ///< "may be driven", "keep out", "30 mph or 20 mph, check the signs"
  bool settled = true;  ///< nothing is against driving it so
};
Said said_of(const RuleMet& met, const TimedDrive& drive);
/// "no left turn Monday to Friday, seven till ten", "may be turned".
Said said_of(const TurnMet& met, const TimedDrive& drive);

/// "shut Monday to Friday, eight till nine; you pass 10:05 to 10:07: may be driven"; of a limit
/// "20 mph when lights flash, else 30 mph; you pass …: 30 mph or 20 mph, check the signs".
std::string met_words(const RuleMet& met, const TimedDrive& drive);

}  // namespace loopwright::lanes
