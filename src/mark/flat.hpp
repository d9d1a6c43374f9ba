// Says quickly that a line turns clearly less than an angle, before its bearings on the earth are taken.
//
//   const Flat flat(line, 25);   if (flat.turns_less(a, b, c)) continue;
//
// Rules: private to mark. Angles in a plane are within a degree of those on the earth for what is shorter than a fifth
// of a degree and not near a pole; the angle is taken 2 degrees narrower, and of other lines nothing is said. Angles to
// 90 degrees.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <span>

#include "loopwright/base/point.hpp"

namespace loopwright::mark {

class Flat {
 public:
  /// A line of at least one point, and the angle.
  Flat(std::span<const Point> line, double angle_deg)
      : east_(std::cos(line.front().lat() * radians)), least_deg_(angle_deg - spare_deg) {
    const double cosine = std::cos(least_deg_ * radians);
    cosine2_ = cosine * cosine;
    const auto [south, north] = std::ranges::minmax(line, {}, &Point::lat_e7);
    const auto [west, east] = std::ranges::minmax(line, {}, &Point::lon_e7);
    constexpr std::int64_t small_e7 = 2'000'000, polar_e7 = 750'000'000;
    const std::int64_t farthest_e7 = std::max(std::abs(south.lat_e7), std::abs(north.lat_e7));
    holds_ = least_deg_ > 0 && std::int64_t{north.lat_e7} - south.lat_e7 < small_e7 &&
             std::int64_t{east.lon_e7} - west.lon_e7 < small_e7 && farthest_e7 < polar_e7;
  }

  /// The way from a over b to c, points of the line or on it, turns less than the angle. False: it may turn more.
  [[nodiscard]] bool turns_less(Point a, Point b, Point c) const {
    if (!holds_) return false;
    const Leg in(east_, a, b), out(east_, b, c);
    const double along = in.x * out.x + in.y * out.y;
    return along > 0 && along * along > cosine2_ * in.squared() * out.squared();
  }

  /// All turns of the line together are less: no two parts of it differ by more.
  [[nodiscard]] bool is_straight(std::span<const Point> line) const {
    double sum_deg = 0;
    for (std::size_t i = 2; holds_ && i < line.size() && sum_deg < least_deg_; ++i) {
      const Leg in(east_, line[i - 2], line[i - 1]), out(east_, line[i - 1], line[i]);
      sum_deg +=
          std::atan2(std::abs(in.x * out.y - in.y * out.x), in.x * out.x + in.y * out.y) / radians;
    }
    return holds_ && sum_deg < least_deg_;
  }

 private:
  static constexpr double radians = std::numbers::pi / 180, spare_deg = 2;
  /// In units of 1e-7 degree of latitude.
  struct Leg {
    Leg(double east, Point from, Point to)
        : x(east * (to.lon_e7 - from.lon_e7)), y(to.lat_e7 - from.lat_e7) {}
    [[nodiscard]] double squared() const { return x * x + y * y; }
    double x, y;
  };

  double east_;  // of a degree of longitude to one of latitude
  double least_deg_, cosine2_ = 0;
  bool holds_ = false;
};

}  // namespace loopwright::mark
