// The rules with hours that a drive meets on its streets, told for the minutes it is there.
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

/// Some rows of a drive under one rule. Valid while the roads are.
struct RuleMet {
  Rows rows;
  const road::TimedRule* rule = nullptr;
};

/// In driving order.
std::vector<RuleMet> rules_met(const road::Roads& roads, const wish::Loop& loop, road::Timed about);

/// A drive, and what its hours are read by. Rules: all three outlive it.
struct TimedDrive {
  const road::Roads& roads;
  const wish::Loop& loop;
  const hours::Setting& setting;
};

/// "shut Monday to Friday, eight till nine; you pass 10:05 to 10:07: may be driven"; of a limit
/// "20 mph when lights flash, else 30 mph; you pass …: 30 mph or 20 mph, check the signs".
std::string met_words(const RuleMet& met, const TimedDrive& drive);

}  // namespace loopwright::lanes
