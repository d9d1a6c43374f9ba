// A road that says nothing of its limit, among streets that do. Rule and distances: ours.
#include <catch2/catch.hpp>

#include "support/built_town.hpp"

namespace loopwright::test {

namespace {

road::LimitFact limit_of(const BuiltTown& town, std::string_view letters) {
  return town.roads().stretch(town.stretch(letters)).limit;
}

}  // namespace

TEST_CASE("a short road between two town streets has the town's limit, to be checked", "[mark]") {
  const BuiltTown town = built_town(R"(
    A    B    C

    D    E    F
  w1 ABC highway=residential
  w2 DEF highway=tertiary maxspeed="30 mph"
  w3 BE  highway=unclassified
  w4 AD  highway=residential
  w5 CF  highway=residential
)");
  CHECK(limit_of(town, "BE").rule == road::LimitRule::restricted);
  CHECK(limit_of(town, "BE").confidence == road::LimitConfidence::check);
  CHECK(town.roads().text(limit_of(town, "BE").source) ==
        "highway=unclassified among streets of a town");
}

TEST_CASE("a country road between a town and nothing keeps the national limit", "[mark]") {
  const BuiltTown town = built_town(R"(
    A    B

    D    E          F

         G          H
  w1 AB highway=residential
  w2 AD highway=residential
  w3 DE highway=residential
  w4 BE highway=residential
  w5 EF highway=unclassified
  w6 FHGE highway=unclassified
)");
  CHECK(limit_of(town, "EF").rule == road::LimitRule::national_single);
}

TEST_CASE("a road said to be unlit keeps the national limit, even among streets", "[mark]") {
  const BuiltTown town = built_town(R"(
    A    B    C

    D    E    F
  w1 ABC highway=residential
  w2 DEF highway=residential
  w3 BE  highway=unclassified lit=no
  w4 AD  highway=residential
  w5 CF  highway=residential
)");
  CHECK(limit_of(town, "BE").rule == road::LimitRule::national_single);
}

TEST_CASE("a long road isn't settled by the streets at its ends", "[mark]") {
  const BuiltTown town = built_town(draw_town(R"(
    A    B    C

    D    E    F
  w1 ABC highway=residential
  w2 DEF highway=residential
  w3 BE  highway=unclassified
  w4 AD  highway=residential
  w5 CF  highway=residential
)",
                                              250),
                                    "GB-ENG");
  CHECK(limit_of(town, "BE").rule == road::LimitRule::national_single);
}

}  // namespace loopwright::test
