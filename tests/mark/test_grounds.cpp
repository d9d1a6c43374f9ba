// Roads inside somebody's own grounds, and what a lesson may drive of them. What is such grounds, and
// how much of a road must lie inside, is our own judgement (OSM wiki, page Tag:highway=service).
#include <catch2/catch.hpp>

#include <string>

#include "loopwright/mark/grounds.hpp"
#include "support/built_town.hpp"
#include "support/drawn_town.hpp"

namespace loopwright::mark {
namespace {

using test::built_town;
using test::BuiltTown;

/// Two streets joined by a road CF, 100 m, of which DE, 50 m, lies inside an area abcd.
std::string town(const std::string& area, const std::string& cross = "highway=service") {
  return R"(
    A  C  B
       .
     a D b
       .
     d E c
       .
    G  F  H
  w1 ACB  highway=residential name=Mill_Street
  w2 CDEF )" +
         cross + R"(
  w3 GFH  highway=residential name=Bell_Yard
  w4 AG   highway=residential name=West_Street
  w5 BH   highway=residential name=East_Street
  f9 )" + area +
         "\n";
}

std::string holding(const std::string& drawing) {
  const RawMap map = test::draw_town(drawing);
  const Grounds grounds(map);
  return grounds.holding(map.ways.at(1));
}

}  // namespace

TEST_CASE("a map without grounds holds no road", "[mark][grounds]") {
  const RawMap map = test::draw_town("A B\nw1 AB highway=service\n");
  CHECK(Grounds(map).holding(map.ways.at(0)).empty());
}

TEST_CASE("a service road through a school's, a car park's or such grounds is theirs",
          "[mark][grounds]") {
  CHECK(holding(town("abcda amenity=school")) == "inside amenity=school");
  CHECK(holding(town("abcda amenity=parking")) == "inside amenity=parking");
  CHECK(holding(town("abcda amenity=parking parking=multi-storey")) == "inside amenity=parking");
  CHECK(holding(town("abcda amenity=fuel")) == "inside amenity=fuel");
  CHECK(holding(town("abcda amenity=hospital")) == "inside amenity=hospital");
}

TEST_CASE("a street through a campus, a lane over a garage and a lane past a pub are nobody's",
          "[mark][grounds]") {
  CHECK(holding(town("abcda amenity=school", "highway=residential")).empty());
  CHECK(holding(town("abcda amenity=parking parking=underground")).empty());
  CHECK(holding(town("abcda amenity=parking parking=street_side")).empty());
  CHECK(holding(town("abcda amenity=pub")).empty());
}

TEST_CASE("an outline that isn't closed, and a mere point, have no inside", "[mark][grounds]") {
  CHECK(holding(town("abcd amenity=school")).empty());
  CHECK(holding(town("D amenity=school")).empty());
}

TEST_CASE("a way in that only ends inside isn't the grounds' own", "[mark][grounds]") {
  const std::string drawing = R"(
    A  C      B
       .
       .
       .
     a . b
     d D c
  w1 ACB highway=residential
  w2 CD  highway=service
  f9 abcda amenity=parking
)";
  CHECK(holding(drawing).empty());  // 25 m of 125 m
}

TEST_CASE("no lesson drives through a school's yard, and a street that ends at it is a dead end",
          "[mark][grounds]") {
  const BuiltTown open = built_town(town("abcda amenity=pub"));
  CHECK(open.drives("ACF"));
  const BuiltTown shut = built_town(town("abcda amenity=school"));
  CHECK_FALSE(shut.drives("ACF"));
  CHECK_FALSE(shut.drives("GFC"));
  CHECK(shut.drives("ACB"));
  const road::Piece& yard = shut.roads().piece(shut.stretch("CF"));
  CHECK(shut.roads().text(yard.access_source) == "inside amenity=school");
  const BuiltTown end = built_town(R"(
    A  B  C
       .
       D
     a . b
     d E c
  w1 ABC highway=residential
  w2 BD  highway=residential
  w3 DE  highway=service
  f9 abcda amenity=school
)");
  CHECK(end.drives("ABDBC"));
}

// Half a degree, ours: wider grounds have a point that somebody moved over land and sea.
TEST_CASE("grounds wider than any are hold nothing, from north to south or from west to east",
          "[mark][grounds]") {
  const auto stretched = [](std::int32_t north_e7, std::int32_t west_e7) {
    RawMap map = test::draw_town(town("abcda amenity=school"));
    auto& line = map.features.at(0).lines.at(0);  // a, b, c, d and a again; a and b to the north
    for (const std::size_t k : {0U, 1U, 4U}) line.at(k).lat_e7 += north_e7;
    for (const std::size_t k : {0U, 3U, 4U}) line.at(k).lon_e7 -= west_e7;
    return Grounds(map).holding(map.ways.at(1));
  };
  CHECK(stretched(0, 0) == "inside amenity=school");
  CHECK(stretched(4'900'000, 0) == "inside amenity=school");
  CHECK(stretched(0, 4'900'000) == "inside amenity=school");
  CHECK(stretched(5'100'000, 0).empty());
  CHECK(stretched(0, 5'100'000).empty());
}

}  // namespace loopwright::mark
