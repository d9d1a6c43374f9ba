// Independent driving: the stretch of a loop on which the learner finds the way. Sources: driving tests have
// about 20 minutes of it (GOV.UK "The car driving test: what happens", and 24 November 2025 on up to the
// whole test, trade and press reports); signs or a few directions: trade. Three directions: common practice.
#include <catch2/catch.hpp>

#include "find/crossing_lesson.hpp"
#include "loopwright/card/card.hpp"
#include "loopwright/wish/independent.hpp"
#include "loopwright/wish/resolve.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;

// A road round a block, a road on at each corner, and home beside it.
constexpr std::string_view block_drawing = R"(
X  A     B     C  G



Y  D     E     F  H


         W     V
w1 XA       highway=residential name=Home_Lane maxspeed=30_mph
w2 ABCFEDA  highway={road}
w3 CG       highway=tertiary name=Quarry_Road maxspeed=30_mph
w4 FH       highway=tertiary name=Ferry_Lane maxspeed=30_mph
w5 DY       highway=tertiary name=Osk_Lane maxspeed=30_mph
w6 BE       highway=tertiary name=Mill_Road maxspeed=30_mph
w7 FV       highway=tertiary name=Ferry_Lane maxspeed=30_mph
w8 EW       highway=tertiary name=Mill_Road maxspeed=30_mph
)";

BuiltTown block(const std::string& road) {
  std::string drawing(block_drawing);
  drawing.replace(drawing.find("{road}"), 6, road);
  return built_town(draw_town(drawing, 100), "GB-ENG");
}

/// The own drive XABCFEDAX.
wish::Answer round_the_block(const BuiltTown& town, int minutes) {
  const road::Roads roads = town.roads();
  const auto at = [&](char letter) { return roads.nodes[town.node(letter).index()].at; };
  const auto middle = [&](char a, char b) {
    return Point{at(a).lat_e7 / 2 + at(b).lat_e7 / 2, at(a).lon_e7 / 2 + at(b).lon_e7 / 2};
  };
  wish::Wish wish;
  wish.home = middle('X', 'A');
  wish.start = {1795878000, 0};
  wish.through = {middle('A', 'B'), middle('B', 'C'), middle('C', 'F'), middle('F', 'E'),
                  middle('D', 'A')};
  wish.independent_minutes = minutes;
  return answer_in(town, wish);
}

TEST_CASE("a stretch follows a road number that is signed at every decision",
          "[find][independent]") {
  const BuiltTown town = block("primary ref=A7901 maxspeed=30_mph");
  const auto answer = round_the_block(town, 3);
  REQUIRE(answer.loops.size() == 1);
  CHECK_FALSE(answer.shortfall);
  REQUIRE(answer.loops[0].independent.size() == 1);
  const wish::IndependentStretch& found = answer.loops[0].independent[0];
  CHECK(found.follow == "A7901");
  CHECK(found.directions.empty());
  CHECK(wish::seconds_of(answer.loops[0], found) >= 180);
  CHECK(false_claim_in(town, answer) == "");
}

TEST_CASE("where nothing is signed a stretch has at most three directions", "[find][independent]") {
  const BuiltTown town = block("tertiary name=Block_Road maxspeed=30_mph");
  const auto answer = round_the_block(town, 2);
  REQUIRE(answer.loops.at(0).independent.size() == 1);
  const wish::IndependentStretch& found = answer.loops[0].independent[0];
  CHECK(found.follow == "");
  CHECK(found.directions.size() <= wish::most_directions);
  CHECK(false_claim_in(town, answer) == "");
}

TEST_CASE("nobody is told directions that can't be found in advance", "[find][independent]") {
  // Round each corner the street has the same name and another road goes on: at none the turn can be told.
  const BuiltTown town = block("tertiary name=Block_Road maxspeed=30_mph");
  const auto answer = round_the_block(town, 4);
  REQUIRE(answer.shortfall);
  CHECK_THAT(answer.shortfall->why,
             Contains("loop 1 has no independent stretch of 4 minutes; the longest has "));
  CHECK(answer.loops.at(0).independent.size() == 1);
  CHECK(false_claim_in(town, answer) == "");
}

TEST_CASE("without being asked for there is none", "[find][independent]") {
  const BuiltTown town = block("primary ref=A7901 maxspeed=30_mph");
  CHECK(round_the_block(town, 0).loops.at(0).independent.empty());
}

TEST_CASE("a search prefers a loop that has the stretch asked for", "[find][independent]") {
  const BuiltTown town = crossing_town();
  wish::Wish wish = crossing_wish(town, 25, {"roundabout=1"});
  wish.independent_minutes = 5;
  const auto answer = answer_in(town, wish);
  REQUIRE(answer.loops.size() == 1);
  REQUIRE(answer.loops[0].independent.size() == 1);
  CHECK_FALSE(answer.shortfall);
  CHECK(false_claim_in(town, answer) == "");
}

TEST_CASE("stops aren't counted, and a stretch is found beside planned stops",
          "[find][independent]") {
  const BuiltTown town = crossing_town();
  wish::Wish wish = crossing_wish(town, 30, {"roundabout=1"});
  wish.independent_minutes = 6;
  wish.stops = {4, 5, {road::Kind::roundabout}};
  const auto answer = answer_in(town, wish);
  REQUIRE(answer.loops.size() == 1);
  CHECK(false_claim_in(town, answer) == "");
}

TEST_CASE("the sheet marks where it begins and ends, and what to tell", "[card][independent]") {
  const BuiltTown town = block("primary ref=A7901 maxspeed=30_mph");
  auto answer = round_the_block(town, 3);
  wish::Loop loop = answer.loops.at(0);
  wish::resolve(town.roads(), loop);
  const hours::Setting setting = setting_of(town.roads());
  const std::string text = card::write_text({town.roads(), answer, loop, setting});
  CHECK_THAT(text, Contains("INDEPENDENT DRIVING, 3 min, begins in A7901") &&
                       Contains("Tell the learner: follow the signs for A7901") &&
                       Contains("INDEPENDENT DRIVING ends in A7901"));
  CHECK_THAT(card::write_geojson({town.roads(), answer, loop, setting}),
             Contains("\"what\":\"independent\",\"follow\":\"A7901\""));
}

}  // namespace
}  // namespace loopwright::test
