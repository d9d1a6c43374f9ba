// A box round a line, for a cheap "can't be near" before distances are measured.
//
// Rules: private to mark. In the units of Point; says "may be near" too often, never too seldom (but
// at the poles).
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <span>

#include "loopwright/base/point.hpp"

namespace loopwright::mark {

struct Box {
  std::int64_t south = INT32_MAX, north = INT32_MIN, west = INT32_MAX, east = INT32_MIN;

  void take(std::span<const Point> line) {
    for (const Point at : line) {
      south = std::min<std::int64_t>(south, at.lat_e7),
      north = std::max<std::int64_t>(north, at.lat_e7);
      west = std::min<std::int64_t>(west, at.lon_e7),
      east = std::max<std::int64_t>(east, at.lon_e7);
    }
  }

  [[nodiscard]] bool may_be_near(Point at, double metres) const {
    constexpr double e7_per_m = 100;  // 1e7 degrees of latitude / 111,000 m, and some more
    const double per_m_east = e7_per_m / std::max(0.1, std::cos(at.lat() * std::numbers::pi / 180));
    const auto up = static_cast<std::int64_t>(metres * e7_per_m);
    const auto across = static_cast<std::int64_t>(metres * per_m_east);
    return at.lat_e7 >= south - up && at.lat_e7 <= north + up && at.lon_e7 >= west - across &&
           at.lon_e7 <= east + across;
  }
};

inline Box box_of(std::span<const Point> line) {
  Box box;
  box.take(line);
  return box;
}

}  // namespace loopwright::mark
