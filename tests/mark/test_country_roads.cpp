#include <catch2/catch.hpp>

#include "mark/shape_town.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using test::is_run;
using test::why_run;

test::BuiltTown road_of(const std::string& tags, std::string_view region = "GB-ENG") {
  return test::built_town("A                       B\nw1 AB " + tags + "\n", region);
}

std::string why(const std::string& tags, std::string_view region = "GB-ENG") {
  return why_run(road_of(tags, region), "AB", Kind::country_road);
}

/// So many numbered houses 20 m beside a straight road: north of one to the east, or east of one to the south.
test::BuiltTown with_houses(mark::RawMap raw, int houses) {
  const Point from = raw.find_node(test::osm_node('A'))->at;
  const Point to = raw.find_node(test::osm_node('B'))->at;
  for (int i = 0; i < houses; ++i) {
    const double share = (i + 0.5) / houses;
    RawFeature house;
    house.object = {1000 + i, ObjectType::node, {}};
    const bool to_the_east = from.lat_e7 == to.lat_e7;
    house.at = point_from_degrees(
        from.lat() + share * (to.lat() - from.lat()) + (to_the_east ? 0.00018 : 0),
        from.lon() + share * (to.lon() - from.lon()) + (to_the_east ? 0 : 0.0003));
    house.tags.add("addr:housenumber", std::to_string(i + 1));
    raw.features.push_back(house);
  }
  return test::built_town(raw, "GB-ENG");
}

/// A kilometre of road to the east with houses beside it.
test::BuiltTown road_with_houses(int houses, const std::string& tags) {
  return with_houses(
      test::draw_town("A                                       B\nw1 AB " + tags + "\n"), houses);
}

TEST_CASE("a town street is no country road", "[mark]") {
  CHECK(why("highway=tertiary maxspeed=\"30 mph\"").empty());
  CHECK(why("highway=tertiary lit=yes").empty());
}

TEST_CASE("the national limit on one carriageway makes a country road", "[mark]") {
  CHECK(why("highway=unclassified maxspeed=\"60 mph\" maxspeed:type=GB:nsl_single") ==
        "maxspeed:type=GB:nsl_single certain");
  CHECK(why("highway=secondary maxspeed=\"60 mph\"") == "maxspeed=60 mph certain");
}

TEST_CASE("an unlit road without a limit mapped is a country road by inference", "[mark]") {
  CHECK(why("highway=unclassified lit=no") == "lit=no, no houses mapped along it inferred");
}

TEST_CASE("a lane of which the map says nothing is one among fields, not in a town", "[mark]") {
  CHECK(why("highway=unclassified") == "highway=unclassified, no houses mapped along it inferred");
  const test::BuiltTown estate = test::built_town(R"(
    a  b  c  d  e  f  g  h  i  j  k  l  m
    A                                   B
    n  o  p  q  r  s  t  u  v  w  x  y  z
  w1 AB                           highway=unclassified
  w2 AanABbmzyxwvutsrqponA        highway=service
  w3 abcdefghijklmB               highway=service
  w4 nbpdrftvhxjzloaqcseuAgwiykm  highway=service
  )");
  CHECK_FALSE(is_run(estate, "AB", Kind::country_road));
}

TEST_CASE("lamps or a pavement along a guessed limit make no country road", "[mark]") {
  CHECK(why("highway=unclassified lit=no sidewalk=left").empty());
  CHECK(why("highway=unclassified lit=no sidewalk:left=yes").empty());
  CHECK(why("highway=unclassified lit=no sidewalk:right=separate").empty());
  CHECK(why("highway=unclassified lit=yes").empty());
}

TEST_CASE("slip roads, dual carriageways and one-way roads are no country roads", "[mark]") {
  CHECK(why("highway=trunk_link maxspeed=\"60 mph\"").empty());
  CHECK(why("highway=trunk oneway=yes maxspeed=\"70 mph\" maxspeed:type=GB:nsl_dual").empty());
  CHECK(why("highway=primary oneway=yes maxspeed=\"60 mph\"").empty());
  CHECK(why("highway=residential maxspeed=\"60 mph\"").empty());
}

TEST_CASE("50 is a sign, not the national limit", "[mark]") {
  CHECK(why("highway=primary maxspeed=\"50 mph\"").empty());
}

TEST_CASE("a road through houses is none, with a few farms along it still is", "[mark]") {
  const std::string signed_60 = "highway=unclassified maxspeed=\"60 mph\"";
  CHECK(is_run(road_with_houses(5, signed_60), "AB", Kind::country_road));
  CHECK_FALSE(is_run(road_with_houses(30, signed_60), "AB", Kind::country_road));
  CHECK_FALSE(is_run(road_with_houses(5, "highway=unclassified lit=no"), "AB", Kind::country_road));
}

// A degree of longitude is shorter than one of latitude the farther north: a house 20 m to the east isn't farther off.
TEST_CASE("houses east of a road are as near to it as houses north of one", "[mark]") {
  const std::string drawn =
      "A\n" + std::string(39, '\n') + "B\nw1 AB highway=unclassified maxspeed=\"60 mph\"\n";
  CHECK(is_run(with_houses(test::draw_town(drawn), 5), "AB", Kind::country_road));
  CHECK_FALSE(is_run(with_houses(test::draw_town(drawn), 30), "AB", Kind::country_road));
}

TEST_CASE("abroad it is the limit outside towns", "[mark]") {
  CHECK(is_run(road_of("highway=secondary maxspeed=80", "LI"), "AB", Kind::country_road));
  CHECK_FALSE(is_run(road_of("highway=secondary maxspeed=50", "LI"), "AB", Kind::country_road));
}

}  // namespace
}  // namespace loopwright::mark
