// A place on the straight between two points, for whoever has measured it already.
//
//   if (along_m < leg_m) return point_between(a, b, along_m / leg_m);
//
// Why: point_along (point.hpp) measures the line each time it is asked, and measuring is what takes long.
#pragma once

#include "loopwright/base/point.hpp"

namespace loopwright {

/// The place at a share of the way from a to b, 0 to 1, to the nearest 1e-7 degree; over the 180th meridian too.
Point point_between(Point a, Point b, double share);

}  // namespace loopwright
