#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "support/built_town.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;

std::vector<road::Chance> changes(const test::BuiltTown& town) {
  std::vector<road::Chance> found;
  for (const road::Chance& chance : town.built.tables.chances) {
    if (chance.kind == Kind::limit_change) found.push_back(chance);
  }
  return found;
}

TEST_CASE("a road with one limit has no limit change", "[mark]") {
  CHECK(changes(test::built_town(R"(
    A     B     C
  w1 AB highway=tertiary maxspeed="30 mph"
  w2 BC highway=tertiary maxspeed="30 mph"
  )"))
            .empty());
}

TEST_CASE("a limit change is met from both sides, at one place", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B     C
  w1 AB highway=tertiary maxspeed="30 mph"
  w2 BC highway=tertiary maxspeed="40 mph"
  )");
  const auto found = changes(town);
  REQUIRE(found.size() == 2);
  CHECK(found[0].place == found[1].place);
  const road::Place& place = town.built.tables.places[found[0].place.index()];
  CHECK(place.source.id == test::osm_node('B'));
  const auto out = std::ranges::find(found, town.stretch("AB"), &road::Chance::entry);
  REQUIRE(out != found.end());
  CHECK(out->exit == town.stretch("BC"));
  CHECK(town.roads().text(out->tag) == "maxspeed=40 mph");
  CHECK(out->source == OsmObject{2, ObjectType::way, {}});
  CHECK(out->confidence == road::Confidence::certain);
  CHECK(out->hardness == 2);
}

TEST_CASE("turning off into a slower street is no limit change", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
          D
    A     B     C
  w1 AB highway=tertiary maxspeed="30 mph"
  w2 BC highway=tertiary maxspeed="30 mph"
  w3 BD highway=residential maxspeed="20 mph"
  )");
  CHECK(changes(town).empty());
}

TEST_CASE("round a bend with no other way to go, the limit changes on the road one follows",
          "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B

          C
  w1 AB highway=tertiary maxspeed="30 mph"
  w2 BC highway=tertiary maxspeed="40 mph"
  )");
  CHECK(changes(town).size() == 2);
}

TEST_CASE("a turn that signs leave as the only one makes no limit change", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B     D

          C
  w1 AB highway=tertiary maxspeed="30 mph"
  w2 BC highway=tertiary maxspeed="40 mph"
  w3 BD highway=tertiary maxspeed="30 mph"
  r1 only_right_turn from=w1 via=B to=w2
  )");
  CHECK(changes(town).empty());
}

TEST_CASE("a guessed limit makes no limit change", "[mark]") {
  CHECK(changes(test::built_town(R"(
    A     B     C
  w1 AB highway=tertiary maxspeed="40 mph"
  w2 BC highway=tertiary lit=yes
  )"))
            .empty());
}

TEST_CASE("a sign of 60 and the national limit are one limit", "[mark]") {
  CHECK(changes(test::built_town(R"(
    A     B     C
  w1 AB highway=tertiary maxspeed="60 mph"
  w2 BC highway=tertiary maxspeed:type=GB:nsl_single
  )"))
            .empty());
}

TEST_CASE("a Welsh restricted road beside a signed 30 is a change, since the law's 20", "[mark]") {
  const char* drawing = R"(
    A     B     C
  w1 AB highway=tertiary maxspeed="30 mph" maxspeed:type=sign
  w2 BC highway=tertiary maxspeed:type=GB:nsl_restricted
  )";
  CHECK(changes(test::built_town(drawing, "GB-WLS")).size() == 2);
  CHECK(changes(test::built_town(drawing, "GB-ENG")).empty());
}

TEST_CASE("a 30 without its unit beside a 30 mph is a slip, and no change", "[mark]") {
  CHECK(changes(test::built_town(R"(
    A     B     C
  w1 AB highway=tertiary maxspeed="30 mph"
  w2 BC highway=tertiary maxspeed=30
  )"))
            .empty());
  CHECK(changes(test::built_town(R"(
    A     B     C
  w1 AB highway=tertiary maxspeed="40 mph"
  w2 BC highway=tertiary maxspeed=30
  )"))
            .size() == 2);
}

TEST_CASE("service roads have no limit changes", "[mark]") {
  CHECK(changes(test::built_town(R"(
    A     B     C
  w1 AB highway=tertiary maxspeed="30 mph"
  w2 BC highway=service maxspeed="10 mph"
  )"))
            .empty());
}

}  // namespace
}  // namespace loopwright::mark
