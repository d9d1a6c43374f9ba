#include "draw/frame.hpp"

#include <cmath>

namespace loopwright::draw {

Spot Frame::spot(Point point) const {
  return distance_m(origin_, point) * towards_deg(bearing_deg(origin_, point) - up_deg_);
}

Line Frame::line(std::span<const Point> points) const {
  Line spots;
  for (const Point point : points) spots.push_back(spot(point));
  return spots;
}

double Frame::angle_of_bearing(double bearing_deg) const {
  const double angle = std::fmod(bearing_deg - up_deg_, 360);
  return angle < 0 ? angle + 360 : angle;
}

}  // namespace loopwright::draw
