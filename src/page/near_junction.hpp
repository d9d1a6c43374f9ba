// The junction that was meant by a click on the map.
//
//   if (const auto at = junction_near(roads, clicked)) …   // as `--keep-off` and `--take` read it: LAT,LON of its node
//
// Why: these words take a point for a junction within 5 m of it alone (DEVELOPERS.md, Keeping off), and a finger isn't so sure.
#pragma once

#include <optional>

#include "loopwright/base/point.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::page {

/// The nearest node at which three roads or more meet, driveways not counted, within 40 m (ours: what a finger misses on a map of
/// streets); none when there is none.
std::optional<Point> junction_near(const road::Roads& roads, Point at);

}  // namespace loopwright::page
