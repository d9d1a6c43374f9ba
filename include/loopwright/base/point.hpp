// Where something is on the earth, and how far and which way it is from there to elsewhere.
//
//   distance_m(point_from_degrees(51.5877, -2.9984), home)
//
// Rules: degrees are WGS 84; a Point keeps them in units of 1e-7 degree, as OpenStreetMap does.
// Lengths follow the ellipsoid (radii of curvature at the middle latitude), right to 1e-6 of the
// length up to 100 km at |latitude| < 80; src/base/point.cpp names the formula.
// Why: a spherical formula is wrong by up to 0.5 %, more than a lesson's minutes allow.
#pragma once

#include <compare>
#include <cstdint>
#include <span>

namespace loopwright {

struct Point {
  std::int32_t lat_e7 = 0;
  std::int32_t lon_e7 = 0;
  [[nodiscard]] double lat() const { return lat_e7 * 1e-7; }
  [[nodiscard]] double lon() const { return lon_e7 * 1e-7; }
  friend constexpr auto operator<=>(const Point&, const Point&) = default;
};

/// Nearest Point to the given degrees. Rules: |lat| <= 90, |lon| <= 180.
Point point_from_degrees(double lat, double lon);

/// Metres from a to b along the ellipsoid.
double distance_m(Point a, Point b);

/// Compass bearing in degrees [0, 360) when leaving a towards b; 0 when both are the same.
double bearing_deg(Point a, Point b);

/// Change of heading in (-180, 180] from one bearing to the next; positive = to the right.
double heading_change_deg(double from_bearing, double to_bearing);

/// Metres along a line of points.
double length_m(std::span<const Point> line);

/// The foot of a point on a line: how far along it, how far off it, and the place itself.
struct Foot {
  double along_m = 0;
  double off_m = 0;
  Point at;
};

/// Nearest place on a line of at least one point.
Foot nearest_on_line(std::span<const Point> line, Point from);

/// The point `along_m` metres from the line's start, clamped to its ends.
Point point_along(std::span<const Point> line, double along_m);

}  // namespace loopwright
