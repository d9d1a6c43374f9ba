// Lengths and azimuths: GeographicLib 2.0 (Debian python3-geographiclib), Geodesic.WGS84.Inverse.
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "loopwright/base/point.hpp"
#include "loopwright/base/point_between.hpp"

namespace loopwright {
namespace {

struct Pair {
  double lat_a, lon_a, lat_b, lon_b, metres, azimuth;
};

const Pair published[] = {
    {51.5877, -2.9984, 51.5884, -2.9978, 88.2881, 28.099217},        // a street in Newport
    {51.5877, -2.9984, 51.4816, -3.1791, 17220.8471, 226.797524},    // Newport to Cardiff
    {51.5877, -2.9984, 51.5877, -2.5, 34542.6210, 89.804736},        // along a parallel
    {55.9533, -3.1883, 55.8642, -4.2518, 67246.0402, 261.957231},    // Edinburgh to Glasgow
    {47.1410, 9.5209, 47.2269, 9.5215, 9549.9917, 0.272622},         // through Liechtenstein
    {60.1699, 24.9384, 60.9827, 25.6612, 98853.1679, 23.318776},     // Helsinki to Lahti
    {79.0, 10.0, 79.5, 12.0, 69651.6009, 35.753325},                 // Spitsbergen
    {-41.2865, 174.7762, -40.3523, 175.6082, 125256.0826, 34.3544},  // southern half, over 100 km
    {-16.8, 179.95, -16.9, -179.9, 19442.4849, 124.716537},          // across the date line
    {0.0, 10.0, 0.0, 10.5, 55659.7454, 90.0},                        // on the equator
};

/// An L: 0.01 degree to the east, then 0.01 degree to the north.
std::vector<Point> corner() {
  return {point_from_degrees(51.5, -3.0), point_from_degrees(51.5, -2.99),
          point_from_degrees(51.51, -2.99)};
}

TEST_CASE("a place is no way from itself", "[base]") {
  const Point home = point_from_degrees(51.5877, -2.9984);
  CHECK(distance_m(home, home) == 0);
  CHECK(bearing_deg(home, home) == 0);
}

TEST_CASE("lengths follow the ellipsoid up to 100 km and more", "[base]") {
  for (const Pair& p : published) {
    const Point a = point_from_degrees(p.lat_a, p.lon_a);
    const Point b = point_from_degrees(p.lat_b, p.lon_b);
    INFO(p.lat_a << ' ' << p.lon_a);
    // The published figures are rounded to 0.1 mm.
    CHECK(distance_m(a, b) == Approx(p.metres).epsilon(1e-7).margin(1e-4));
    CHECK(distance_m(b, a) == Approx(p.metres).epsilon(1e-7).margin(1e-4));
  }
}

TEST_CASE("bearings are those on leaving, clockwise from north", "[base]") {
  for (const Pair& p : published) {
    const Point a = point_from_degrees(p.lat_a, p.lon_a);
    const Point b = point_from_degrees(p.lat_b, p.lon_b);
    INFO(p.lat_a << ' ' << p.lon_a);
    CHECK(bearing_deg(a, b) == Approx(p.azimuth).margin(1e-5));
  }
}

TEST_CASE("degrees are kept to the nearest ten-millionth, as the map does", "[base]") {
  const Point p = point_from_degrees(51.58770004, -2.99839996);
  CHECK(p.lat_e7 == 515877000);
  CHECK(p.lon_e7 == -29984000);
  CHECK(point_from_degrees(-90, 180).lon_e7 == 1800000000);
}

TEST_CASE("turning right is a positive change of heading", "[base]") {
  CHECK(heading_change_deg(0, 90) == Approx(90));
  CHECK(heading_change_deg(350, 10) == Approx(20));
  CHECK(heading_change_deg(10, 350) == Approx(-20));
  CHECK(heading_change_deg(90, 270) == 180);
  CHECK(heading_change_deg(270, 90) == 180);
}

TEST_CASE("a line is as long as its parts", "[base]") {
  const auto line = corner();
  CHECK(length_m({}) == 0);
  CHECK(length_m(std::span(line).first(1)) == 0);
  CHECK(length_m(line) == Approx(distance_m(line[0], line[1]) + distance_m(line[1], line[2])));
}

TEST_CASE("the nearest place on a road is square to it", "[base]") {
  const auto line = corner();
  const Point from = point_from_degrees(51.505, -2.985);
  const Foot foot = nearest_on_line(line, from);
  CHECK(foot.at.lon() == Approx(-2.99).margin(1e-7));
  CHECK(foot.at.lat() == Approx(51.505).margin(1e-6));
  CHECK(foot.off_m == Approx(distance_m(foot.at, from)).epsilon(1e-5));
  CHECK(foot.along_m == Approx(distance_m(line[0], line[1]) + distance_m(line[1], foot.at)));
}

TEST_CASE("beyond a road's end the end itself is nearest", "[base]") {
  const auto line = corner();
  const Foot before = nearest_on_line(line, point_from_degrees(51.5, -3.01));
  CHECK(before.at == line.front());
  CHECK(before.along_m == 0);
  const Foot after = nearest_on_line(line, point_from_degrees(51.52, -2.99));
  CHECK(after.at == line.back());
  CHECK(after.along_m == Approx(length_m(line)));
}

TEST_CASE("a road of a single point, or of the same point twice, has that point nearest",
          "[base]") {
  const Point only = point_from_degrees(51.5, -3.0);
  const std::vector<Point> twice{only, only};
  const Point from = point_from_degrees(51.5, -3.001);
  CHECK(nearest_on_line(std::span(twice).first(1), from).at == only);
  CHECK(nearest_on_line(twice, from).at == only);
  CHECK(nearest_on_line(twice, from).off_m == Approx(distance_m(only, from)).epsilon(1e-6));
}

TEST_CASE("a point along a road lies that far from its start, or at its ends", "[base]") {
  const auto line = corner();
  const double whole = length_m(line);
  CHECK(point_along(line, -5) == line.front());
  CHECK(point_along(line, whole + 5) == line.back());
  for (const double along : {1.0, 400.0, 900.0, 1500.0}) {
    CHECK(nearest_on_line(line, point_along(line, along)).along_m == Approx(along).margin(0.02));
  }
}

TEST_CASE("a road across the date line has its middle there", "[base]") {
  const std::vector<Point> line{point_from_degrees(-16.8, 179.95),
                                point_from_degrees(-16.8, -179.95)};
  const Point middle = point_along(line, length_m(line) / 2);
  CHECK(std::abs(middle.lon()) == Approx(180).margin(1e-6));
}

TEST_CASE("longitudes beside a point go on over the date line", "[base]") {
  const Point west{0, 1'799'999'990}, east{0, -1'799'999'990}, greenwich{0, 0};
  CHECK(lon_difference_e7(west, east) == 20);
  CHECK(lon_difference_e7(east, west) == -20);
  CHECK(lon_difference_e7(greenwich, east) == -1'799'999'990);
  CHECK(lon_beside_e7(east, west) == 1'800'000'010);
  CHECK(lon_beside_e7(west, east) == -1'800'000'010);
  CHECK(lon_beside_e7(west, greenwich) == west.lon_e7);
  CHECK(point_of_turn(0, 1'800'000'010) == east);
  CHECK(point_of_turn(0, -1'800'000'010) == west);
  CHECK(point_of_turn(5, 6) == Point{5, 6});
}

}  // namespace
}  // namespace loopwright
