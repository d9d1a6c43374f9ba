// Metres on a plan and degrees on the globe.
//
//   const Projection flat(54.3, 2.6);  flat.lat(100);  flat.lon(-50);
//
// Rules: a degree has as many metres everywhere on a plan as at its origin, from the radii of
// curvature of WGS 84; 10 km north of it distances east and west are 0.3 % too long.
#pragma once

namespace loopwright::county {

class Projection {
 public:
  /// Degrees; between 80 south and 80 north.
  Projection(double origin_lat, double origin_lon);
  [[nodiscard]] double lat(double y_m) const { return lat_ + y_m / lat_m_; }
  [[nodiscard]] double lon(double x_m) const { return lon_ + x_m / lon_m_; }
  [[nodiscard]] double y_m(double lat) const { return (lat - lat_) * lat_m_; }
  [[nodiscard]] double x_m(double lon) const { return (lon - lon_) * lon_m_; }

 private:
  double lat_, lon_, lat_m_, lon_m_;
};

}  // namespace loopwright::county
