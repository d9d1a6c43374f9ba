// A place on the straight between two points, for whoever has measured it already; and how far east one is of another.
//
//   if (along_m < leg_m) return point_between(a, b, along_m / leg_m);
//
// Why: point_along (point.hpp) measures the line each time it is asked, and measuring is what takes long.
#pragma once

#include <cstdint>

#include "loopwright/base/point.hpp"

namespace loopwright {

/// The place at a share of the way from a to b, 0 to 1, to the nearest 1e-7 degree; over the 180th meridian too.
Point point_between(Point a, Point b, double share);

/// How far b is east of a by the shorter way round the earth, in 1e-7 degree, -180 to 180 degrees. A plain difference is wrong for two
/// points on either side of the 180th meridian, and may be more than an std::int32_t holds.
std::int64_t lon_difference_e7(Point a, Point b);

/// The longitude of a point in 1e-7 degree, counted on beyond 180 degrees where it lies across that meridian from another, so that
/// longitudes beside one point can be added up.
std::int64_t lon_beside_e7(Point at, Point other);

/// The point of a latitude and such a longitude, less than half a turn beyond 180 degrees.
Point point_of_turn(std::int64_t lat_e7, std::int64_t lon_e7);

}  // namespace loopwright
