#include "county/projection.hpp"

#include <cmath>
#include <numbers>

namespace loopwright::county {

Projection::Projection(double origin_lat, double origin_lon) : lat_(origin_lat), lon_(origin_lon) {
  constexpr double axis_m = 6378137.0;         // semi-major axis of WGS 84
  constexpr double square = 0.00669437999014;  // its first eccentricity, squared
  constexpr double radian = std::numbers::pi / 180;
  const double w2 = 1 - square * std::pow(std::sin(origin_lat * radian), 2);
  lat_m_ = radian * axis_m * (1 - square) / std::pow(w2, 1.5);
  lon_m_ = radian * axis_m / std::sqrt(w2) * std::cos(origin_lat * radian);
}

}  // namespace loopwright::county
