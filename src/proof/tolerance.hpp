// How far a number in a file may lie from the area's own. A file gives metres to 0.01 and seconds
// to 0.001; the parts driven of the first and the last piece are known no better than that.
#pragma once

namespace loopwright::proof {

inline constexpr double length_tolerance_m = 0.02;
/// Of likely times: 0.01 m at a walk.
inline constexpr double time_tolerance_s = 0.02;
/// Of low and high times: their spread goes with the root of the time, so near the start a little
/// length makes much of it.
inline constexpr double spread_tolerance_s = 0.2;
/// DEVELOPERS.md, place: a home is snapped to a road at most this far away.
inline constexpr double most_off_road_m = 150;

inline bool near(double a, double b, double tolerance) {
  return a - b <= tolerance && b - a <= tolerance;
}

}  // namespace loopwright::proof
