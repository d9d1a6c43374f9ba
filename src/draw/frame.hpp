// The ground around a place as metres on a sheet, turned so that one heading points up.
#pragma once

#include <span>

#include "draw/lines.hpp"
#include "loopwright/base/point.hpp"

namespace loopwright::draw {

class Frame {
 public:
  Frame() = default;
  /// `up_deg`: the compass bearing that points up.
  Frame(Point origin, double up_deg) : origin_(origin), up_deg_(up_deg) {}

  [[nodiscard]] Spot spot(Point point) const;
  [[nodiscard]] Line line(std::span<const Point> points) const;
  /// Clockwise from up, 0 to 360.
  [[nodiscard]] double angle_of_bearing(double bearing_deg) const;

 private:
  Point origin_;
  double up_deg_ = 0;
};

}  // namespace loopwright::draw
