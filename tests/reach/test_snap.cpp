// Snapping a door to the roads. 150 m: project definition (DEVELOPERS.md, "Place").
#include <catch2/catch.hpp>

#include "loopwright/reach/reach.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {

namespace {

constexpr std::string_view two_streets = R"(
    A         B

    C         D
  w1 AB highway=residential
  w2 CD highway=residential
  w3 AC highway=residential
  w4 BD highway=residential
)";

Point moved(Point at, double north_m, double east_m) {
  return point_from_degrees(at.lat() + north_m / 111300, at.lon() + east_m / 64900);
}

}  // namespace

TEST_CASE("a door is snapped to the street in front of it", "[reach]") {
  const BuiltTown town = built_town(two_streets);
  const road::Roads roads = town.roads();
  const Point a = roads.nodes[town.node('A').index()].at;
  const auto snap = reach::snap_home(roads, moved(a, 10, 100));
  REQUIRE(snap);
  CHECK(snap->piece == town.stretch("AB").piece());
  CHECK(snap->along_m == Approx(100).margin(2));
  CHECK(snap->off_m == Approx(10).margin(1));
}

TEST_CASE("a two-way street may be left in both directions, a one-way street in one", "[reach]") {
  const BuiltTown town = built_town(R"(
    A    B    E

    C    D    F
  w1 AB highway=residential oneway=yes
  w2 BDCA highway=residential
  w3 BEFD highway=residential
)");
  const road::Roads roads = town.roads();
  const pace::Pace pace(roads, {.level = 3}, {1795878000, 0});
  const Point a = roads.nodes[town.node('A').index()].at;
  const Point b = roads.nodes[town.node('B').index()].at;
  const Point on_two_way = moved(b, -25, 1);
  const auto one_way = reach::snap_home(roads, moved(a, 3, 60));
  const auto two_way = reach::snap_home(roads, on_two_way);
  REQUIRE(one_way);
  REQUIRE(two_way);
  CHECK(reach::leaving(roads, pace, *one_way).size() == 1);
  CHECK(reach::leaving(roads, pace, *two_way).size() == 2);
  CHECK(reach::arriving(roads, pace, *two_way).size() == 2);
}

TEST_CASE("leaving and arriving together take as long as the whole street", "[reach]") {
  const BuiltTown town = built_town(two_streets);
  const road::Roads roads = town.roads();
  const pace::Pace pace(roads, {.level = 3}, {1795878000, 0});
  const Point a = roads.nodes[town.node('A').index()].at;
  const auto snap = reach::snap_home(roads, moved(a, 5, 80));
  REQUIRE(snap);
  const auto out = reach::leaving(roads, pace, *snap);
  const auto in = reach::arriving(roads, pace, *snap);
  REQUIRE(out.size() == in.size());
  const std::int64_t whole = pace.along(town.stretch("AB")).likely_ms;
  for (std::size_t k = 0; k < out.size(); ++k) CHECK(std::abs(out[k].ms + in[k].ms - whole) <= 1);
}

TEST_CASE("a plain service road is taken only when no street is near", "[reach]") {
  const BuiltTown town = built_town(R"(
    A         B

    C         D
  w1 AB highway=residential
  w2 CD highway=service
  w3 AC highway=residential
  w4 BD highway=residential
)");
  const road::Roads roads = town.roads();
  const Point c = roads.nodes[town.node('C').index()].at;
  const auto snap = reach::snap_home(roads, moved(c, 2, 100));
  REQUIRE(snap);
  CHECK(snap->piece != town.stretch("CD").piece());
  const auto nearer = reach::snap_home(roads, moved(c, 2, 100), 10);
  REQUIRE(nearer);
  CHECK(nearer->piece == town.stretch("CD").piece());
}

TEST_CASE("a door farther than 150 m from any road isn't snapped, but the nearest is told",
          "[reach]") {
  const BuiltTown town = built_town(two_streets);
  const road::Roads roads = town.roads();
  const Point a = roads.nodes[town.node('A').index()].at;
  const Point field = moved(a, 400, 50);
  CHECK_FALSE(reach::snap_home(roads, field));
  const auto nearest = reach::nearest_road(roads, field);
  REQUIRE(nearest);
  CHECK(nearest->off_m == Approx(400).margin(5));
  CHECK_FALSE(reach::nearest_road(roads, point_from_degrees(0, 0)));
}

}  // namespace loopwright::test
