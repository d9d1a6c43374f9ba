#include "county/spot.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

using namespace loopwright::county;

namespace {

constexpr double pi = std::numbers::pi;

}  // namespace

TEST_CASE("a place is a whole number of centimetres", "[county]") {
  CHECK(spot(1.004, -2.006) == Spot{100, -201});
  CHECK(spot(3, 4).x() == 3.0);
}

TEST_CASE("distances, directions and turns", "[county]") {
  const Spot a = spot(0, 0);
  CHECK(apart(a, spot(3, 4)) == Approx(5));
  CHECK(towards(a, spot(10, 0), 4) == spot(4, 0));
  CHECK(towards(a, spot(10, 0), 14) == spot(14, 0));
  CHECK(on_circle(spot(1, 1), 2, pi / 2) == spot(1, 3));
  CHECK(angle_of(a, spot(0, 5)) == Approx(pi / 2));
  CHECK(turn_at(a, spot(5, 0), spot(5, 5)) == Approx(pi / 2));
  CHECK(turn_at(a, spot(5, 0), spot(5, -5)) == Approx(-pi / 2));
  CHECK(turn_at(a, spot(5, 0), a) == Approx(pi));
}

TEST_CASE("segments meet where they cross or touch, and not when parallel", "[county]") {
  CHECK(meeting(spot(0, 0), spot(10, 0), spot(5, -5), spot(5, 5)) == spot(5, 0));
  CHECK(meeting(spot(0, 0), spot(10, 0), spot(10, 0), spot(10, 5)) == spot(10, 0));
  CHECK_FALSE(meeting(spot(0, 0), spot(10, 0), spot(11, -5), spot(11, 5)));
  CHECK_FALSE(meeting(spot(0, 0), spot(10, 0), spot(0, 1), spot(10, 1)));
}

TEST_CASE("a curve goes through every point that is given", "[county]") {
  const std::array<Spot, 3> through{spot(0, 0), spot(100, 50), spot(200, 0)};
  const std::vector<Spot> curve = bend(through);
  CHECK(curve.size() > 5);
  CHECK(curve.front() == through[0]);
  CHECK(std::count(curve.begin(), curve.end(), through[1]) == 1);
  CHECK(curve.back() == through[2]);
  for (std::size_t i = 1; i < curve.size(); ++i) CHECK(apart(curve[i - 1], curve[i]) < 60);
}

TEST_CASE("a straight road stays two points and those between that are given", "[county]") {
  const std::array<Spot, 3> straight{spot(0, 0), spot(300, 0), spot(600, 0)};
  CHECK(bend(straight).size() == 3);
  const std::array<Spot, 2> two{spot(0, 0), spot(300, 0)};
  CHECK(bend(two).size() == 2);
}

TEST_CASE("a line beside another lies to its left", "[county]") {
  const std::array<Spot, 3> line{spot(0, 0), spot(50, 0), spot(100, 0)};
  CHECK(beside(line, 7) == std::vector<Spot>{spot(0, 7), spot(50, 7), spot(100, 7)});
  CHECK(beside(line, -7)[1] == spot(50, -7));
}

TEST_CASE("places along a line, clamped to its ends", "[county]") {
  const std::array<Spot, 3> line{spot(0, 0), spot(100, 0), spot(100, 100)};
  CHECK(length_m(line) == Approx(200));
  CHECK(along(line, 50) == spot(50, 0));
  CHECK(along(line, 150, 5) == spot(95, 50));
  CHECK(along(line, 999) == spot(100, 100));
  CHECK(along(line, -5) == spot(0, 0));
}

TEST_CASE("the foot on a line is on its nearest segment", "[county]") {
  const std::array<Spot, 3> line{spot(0, 0), spot(100, 0), spot(100, 100)};
  const Foot foot = nearest(line, spot(90, 40));
  CHECK(foot.off_m == Approx(10));
  CHECK(foot.segment == 1);
  CHECK(foot.at == spot(100, 40));
  CHECK(nearest(line, spot(-3, -4)).off_m == Approx(5));
}

TEST_CASE("inside a polygon, also one with a bay", "[county]") {
  const std::array<Spot, 5> bay{spot(0, 0), spot(100, 0), spot(100, 100), spot(50, 30),
                                spot(0, 100)};
  CHECK(inside(bay, spot(20, 40)));
  CHECK_FALSE(inside(bay, spot(50, 60)));
  CHECK_FALSE(inside(bay, spot(-1, 50)));
}
