// Method (Gauss's mid-latitude formula for short geodesics, third order; any textbook of geodesy):
// 1. With the radii of curvature at the middle latitude, east = N cos(lat) dlon and
//    north = M dlat, each with its two third-order terms.
// 2. Length = their hypotenuse; azimuth at the middle = their angle; the azimuth at the start is
//    that less half the convergence of the meridians.
// The first terms left out are below 1e-7 of the length at 100 km and 80 degrees; tests compare
// with Karney's algorithm. Feet on a line are found in the plane that touches the earth at the
// point asked for: a line is within a few hundred metres then.
#include "loopwright/base/point.hpp"
#include "loopwright/base/point_between.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace loopwright {
namespace {

constexpr double radians = std::numbers::pi / 180;
// WGS 84 (EPSG 7030).
constexpr double equator_radius_m = 6378137.0;
constexpr double flattening = 1 / 298.257223563;
constexpr double eccentricity2 = flattening * (2 - flattening);
constexpr double second_eccentricity2 = eccentricity2 / (1 - eccentricity2);

constexpr std::int64_t whole_turn_e7 = 3'600'000'000;

double lat_difference_rad(Point a, Point b) {
  return static_cast<double>(std::int64_t{b.lat_e7} - a.lat_e7) * 1e-7 * radians;
}

double lon_difference_rad(Point a, Point b) {
  return static_cast<double>(lon_difference_e7(a, b)) * 1e-7 * radians;
}

/// Two points and the latitude half-way between them; its sine is dear, and asked for more than once.
struct Pair {
  Pair(Point a, Point b) : dlat(lat_difference_rad(a, b)), dlon(lon_difference_rad(a, b)) {
    const double lat = (a.lat() + b.lat()) / 2 * radians;
    sine = std::sin(lat), cosine = std::cos(lat);
  }
  double dlat, dlon, sine, cosine;
};

/// The geodesic from a to b as seen at its middle.
struct Geodesic {
  double east_m = 0;
  double north_m = 0;
};

/// Azimuth at the second point less azimuth at the first, of the geodesic between them.
double convergence_rad(const Pair& pair) {
  const auto [dlat, dlon, sine, cosine] = pair;
  // Below 6 km what the first order leaves out is under 1e-9.
  constexpr double short_rad = 1e-3;
  if (std::abs(dlon) < short_rad && std::abs(dlat) < short_rad) return dlon * sine;
  return 2 * std::atan(std::tan(dlon / 2) * sine / std::cos(dlat / 2));
}

Geodesic geodesic(const Pair& pair) {
  const auto [dlat, dlon, s, c] = pair;
  const double s2 = s * s;
  const double eta2 = second_eccentricity2 * c * c;
  const double v2 = 1 + eta2;
  const double n = equator_radius_m / std::sqrt(1 - eccentricity2 * s2);
  // Within a kilometre the third-order terms are under 1e-8.
  constexpr double short_rad = 1.6e-4;
  if (std::abs(dlat) < short_rad && std::abs(dlon) < short_rad) {
    return {n * c * dlon, n / v2 * dlat};
  }
  // eta2 * tan(lat)^2, written so that it holds at the poles too.
  const double eta2_t2 = second_eccentricity2 * s2;
  const double east = 1 + dlat * dlat * (1 + eta2 - 9 * eta2_t2 + eta2 * eta2) / (24 * v2 * v2) -
                      dlon * dlon * s2 / 24;
  const double north =
      1 - dlon * dlon * (2 * c * c + 3 * s2 + 2 * c * c * eta2) / 24 +
      dlat * dlat * (eta2 - eta2_t2 + eta2 * eta2 + 4 * eta2 * eta2_t2) / (8 * v2 * v2);
  return {n * c * dlon * east, n / v2 * dlat * north};
}

/// Metres per 1e-7 degree around a point, and its neighbours in that plane.
class Plane {
 public:
  explicit Plane(Point middle) : middle_(middle) {
    const double s = std::sin(middle.lat() * radians);
    const double w2 = 1 - eccentricity2 * s * s;
    const double n = equator_radius_m / std::sqrt(w2);
    north_m_ = n * (1 - eccentricity2) / w2 * radians * 1e-7;
    east_m_ = n * std::cos(middle.lat() * radians) * radians * 1e-7;
  }
  [[nodiscard]] double x(Point p) const {
    return static_cast<double>(lon_difference_e7(middle_, p)) * east_m_;
  }
  [[nodiscard]] double y(Point p) const {
    return static_cast<double>(std::int64_t{p.lat_e7} - middle_.lat_e7) * north_m_;
  }
  /// Share of the way from a to b at which the middle is nearest, 0 to 1.
  [[nodiscard]] double share(Point a, Point b) const {
    const double dx = x(b) - x(a);
    const double dy = y(b) - y(a);
    const double length2 = dx * dx + dy * dy;
    if (length2 == 0) return 0;
    return std::clamp(-(x(a) * dx + y(a) * dy) / length2, 0.0, 1.0);
  }
  /// Squared metres from the middle to that place.
  [[nodiscard]] double off2(Point a, Point b, double share) const {
    const double px = x(a) + share * (x(b) - x(a));
    const double py = y(a) + share * (y(b) - y(a));
    return px * px + py * py;
  }

 private:
  Point middle_;
  double north_m_ = 0;
  double east_m_ = 0;
};

/// As std::llround of what is far below 2^52, whose call takes longer than the rest of a place between two points.
std::int64_t rounded(double value) {
  const auto whole = static_cast<std::int64_t>(value);
  const double rest = value - static_cast<double>(whole);
  if (rest >= 0.5) return whole + 1;
  return rest <= -0.5 ? whole - 1 : whole;
}

}  // namespace

std::int64_t lon_difference_e7(Point a, Point b) {
  const std::int64_t difference = std::int64_t{b.lon_e7} - a.lon_e7;
  if (difference > whole_turn_e7 / 2) return difference - whole_turn_e7;
  if (difference < -whole_turn_e7 / 2) return difference + whole_turn_e7;
  return difference;
}

std::int64_t lon_beside_e7(Point at, Point other) {
  return other.lon_e7 + lon_difference_e7(other, at);
}

Point point_of_turn(std::int64_t lat_e7, std::int64_t lon_e7) {
  if (lon_e7 > whole_turn_e7 / 2) lon_e7 -= whole_turn_e7;
  if (lon_e7 < -whole_turn_e7 / 2) lon_e7 += whole_turn_e7;
  return {static_cast<std::int32_t>(lat_e7), static_cast<std::int32_t>(lon_e7)};
}

Point point_between(Point a, Point b, double share) {
  const double lat = share * static_cast<double>(std::int64_t{b.lat_e7} - a.lat_e7);
  const double lon = share * static_cast<double>(lon_difference_e7(a, b));
  return point_of_turn(a.lat_e7 + rounded(lat), a.lon_e7 + rounded(lon));
}

Point point_from_degrees(double lat, double lon) {
  assert(std::abs(lat) <= 90 && std::abs(lon) <= 180);
  return {static_cast<std::int32_t>(std::llround(lat * 1e7)),
          static_cast<std::int32_t>(std::llround(lon * 1e7))};
}

double distance_m(Point a, Point b) {
  const Geodesic line = geodesic({a, b});
  return std::sqrt(line.east_m * line.east_m + line.north_m * line.north_m);
}

double bearing_deg(Point a, Point b) {
  if (a == b) return 0;
  const Pair pair(a, b);
  const Geodesic line = geodesic(pair);
  const double start = std::atan2(line.east_m, line.north_m) - convergence_rad(pair) / 2;
  double degrees = start / radians;
  while (degrees < 0) degrees += 360;
  while (degrees >= 360) degrees -= 360;
  return degrees;
}

double heading_change_deg(double from_bearing, double to_bearing) {
  const double change = std::remainder(to_bearing - from_bearing, 360);
  return change == -180 ? 180 : change;
}

double length_m(std::span<const Point> line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += distance_m(line[i - 1], line[i]);
  return sum;
}

Foot nearest_on_line(std::span<const Point> line, Point from) {
  assert(!line.empty());
  const Plane plane(from);
  double best_off2 = plane.off2(line.front(), line.front(), 0);
  double best_share = 0;
  std::size_t best = 0;  // the segment ends at this point; 0: the first point itself
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double share = plane.share(line[i - 1], line[i]);
    const double off2 = plane.off2(line[i - 1], line[i], share);
    if (off2 < best_off2) best_off2 = off2, best_share = share, best = i;
  }
  if (best == 0) return {0, std::sqrt(best_off2), line.front()};
  const double segment_m = distance_m(line[best - 1], line[best]);
  return {length_m(line.first(best)) + best_share * segment_m, std::sqrt(best_off2),
          point_between(line[best - 1], line[best], best_share)};
}

Point point_along(std::span<const Point> line, double along_m) {
  assert(!line.empty());
  if (along_m <= 0) return line.front();
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double segment_m = distance_m(line[i - 1], line[i]);
    if (along_m < segment_m) return point_between(line[i - 1], line[i], along_m / segment_m);
    along_m -= segment_m;
  }
  return line.back();
}

}  // namespace loopwright
