// The junction that a point means, as words that keep off a place or ask for one take it, and a click on the map.
//
//   if (const auto at = road::junction_near(roads, clicked, 40)) …   // the point of its node
#pragma once

#include <optional>

#include "loopwright/road/roads.hpp"

namespace loopwright::road {

/// The nearest node within so many metres at which three roads or more meet, driveways and the like not counted; none
/// when there is none.
std::optional<Point> junction_near(const Roads& roads, Point at, double within_m);

}  // namespace loopwright::road
