// The ground of what is looked for around a door when there is no drive yet.
#pragma once

#include "find/clock_walls.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// The wish with the minutes that going so far there and back takes: the time in which hours matter.
wish::Wish there_and_back(const wish::Wish& wish, double within_minutes);

/// Nobody knows yet when one would be there: what may be shut in that time is.
ClockWalls near_walls(const road::Roads& roads, const wish::Wish& wish,
                      const hours::Setting& setting);

}  // namespace loopwright::find
