#include <algorithm>
#include <catch2/catch.hpp>

#include "loopwright/road/findings.hpp"
#include "support/built_town.hpp"

namespace loopwright::road {
namespace {

std::vector<Finding> of_kind(const Roads& roads, Kind kind) {
  std::vector<Finding> all = findings(roads);
  std::erase_if(all, [&](const Finding& f) { return f.kind != kind; });
  return all;
}

TEST_CASE("an area without roads has no findings", "[road]") {
  CHECK(findings({}).empty());
}

TEST_CASE("a zebra driven both ways is found once", "[road]") {
  const test::BuiltTown town = test::built_town(R"(
    A    z    B
  w1 AzB highway=tertiary
  nz     highway=crossing crossing=zebra
  )");
  const auto zebras = of_kind(town.roads(), Kind::zebra);
  REQUIRE(zebras.size() == 1);
  CHECK(zebras[0].object == OsmObject{126, ObjectType::node, {}});
  CHECK(town.roads().text(zebras[0].tag) == "crossing=zebra");
  CHECK(zebras[0].confidence == Confidence::certain);
  CHECK(zebras[0].length_m == 0);
}

TEST_CASE("a run is found once for each way and tag, with its road counted once", "[road]") {
  const test::BuiltTown town = test::built_town(R"(
    A    B    C    D
              E
  w1 ABCD highway=residential maxspeed="20 mph" maxspeed:type=sign
  w2 CE   highway=residential maxspeed="20 mph" maxspeed:type=sign
  )");
  const auto limits = of_kind(town.roads(), Kind::twenty_limit);
  REQUIRE(limits.size() == 2);
  CHECK(limits[0].object == OsmObject{1, ObjectType::way, {}});
  CHECK(limits[0].length_m == Approx(375).margin(1));
  CHECK(limits[1].object == OsmObject{2, ObjectType::way, {}});
  CHECK(limits[1].length_m == Approx(25).margin(1));
}

TEST_CASE("a crossing that no learner may drive over is found all the same", "[road]") {
  const test::BuiltTown town = test::built_town(R"(
    A    B    z    C
  w1 AB  highway=tertiary
  w2 BzC highway=tertiary access=private
  nz     highway=crossing crossing=zebra
  )");
  CHECK(of_kind(town.roads(), Kind::zebra).size() == 1);
}

}  // namespace
}  // namespace loopwright::road
