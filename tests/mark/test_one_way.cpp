#include <catch2/catch.hpp>
#include <string>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

/// "along", "against", "both" or "neither".
std::string ways(const Tags& tags, RoadClass road_class = RoadClass::residential) {
  const OneWay one_way = one_way_of(tags, road_class);
  CHECK(one_way.one_way == !(one_way.along && one_way.against));
  if (one_way.along && one_way.against) return "both";
  if (!one_way.along && !one_way.against) return "neither";
  return one_way.along ? "along" : "against";
}

TEST_CASE("a street that says nothing goes both ways", "[mark]") {
  CHECK(ways({}) == "both");
}

// OSM wiki, Key:oneway.
TEST_CASE("oneway is understood in all its spellings", "[mark]") {
  for (const char* yes : {"yes", "true", "1"}) CHECK(ways({{"oneway", yes}}) == "along");
  for (const char* no : {"no", "false", "0"}) CHECK(ways({{"oneway", no}}) == "both");
  for (const char* back : {"-1", "reverse"}) CHECK(ways({{"oneway", back}}) == "against");
  CHECK(ways({{"oneway", "alternating"}}) == "both");
  CHECK(ways({{"oneway", "reversible"}}) == "neither");
  CHECK(one_way_of({{"oneway", "-1"}}, RoadClass::primary).tag == "oneway=-1");
}

TEST_CASE("a oneway word nobody knows is taken strictly", "[mark]") {
  CHECK(ways({{"oneway", "sometimes"}}) == "along");
}

TEST_CASE("what frees buses and bicycles frees no car", "[mark]") {
  CHECK(ways({{"oneway", "yes"}, {"oneway:bus", "no"}, {"oneway:bicycle", "no"}}) == "along");
  CHECK(ways({{"oneway", "yes"}, {"oneway:motor_vehicle", "no"}}) == "both");
  CHECK(ways({{"oneway:motor_vehicle", "yes"}}) == "along");
}

TEST_CASE("rings, motorways and their links are one-way without saying so", "[mark]") {
  CHECK(ways({{"junction", "roundabout"}}) == "along");
  CHECK(ways({{"junction", "circular"}}) == "along");
  CHECK(ways({}, RoadClass::motorway) == "along");
  CHECK(ways({}, RoadClass::motorway_link) == "along");
  CHECK(ways({}, RoadClass::trunk_link) == "both");
  CHECK(one_way_of({{"junction", "circular"}}, RoadClass::primary).tag == "junction=circular");
}

TEST_CASE("oneway=no frees a circular ring and a link, no roundabout and no motorway", "[mark]") {
  CHECK(ways({{"junction", "circular"}, {"oneway", "no"}}) == "both");
  CHECK(ways({{"oneway", "no"}}, RoadClass::motorway_link) == "both");
  CHECK(ways({{"junction", "roundabout"}, {"oneway", "no"}}) == "along");
  CHECK(ways({{"oneway", "no"}}, RoadClass::motorway) == "along");
}

TEST_CASE("a turning circle is no ring", "[mark]") {
  CHECK(ways({{"highway", "turning_circle"}}) == "both");
}

}  // namespace
}  // namespace loopwright::mark
