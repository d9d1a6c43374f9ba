// Service roads that aren't private: not counted among roads, but taken when the way leads there.
#include <catch2/catch.hpp>

#include "say/said.hpp"

namespace loopwright::test {
namespace {

constexpr std::string_view access_roads = R"(
    A  B     C    D    F
                       J
             E    G
  w1 AB    highway=residential name=Lantern_Row maxspeed="20 mph"
  w50 BCDF highway=residential name=Lantern_Row maxspeed="20 mph"
  w2 CE    highway=service
  w3 DG    highway=service
  w5 EG    highway=service
)";

/// A small road leads off at C, hardly off the way, and one at D, 20 m to a character.
std::string almost_ahead(std::size_t columns_to_d) {
  const std::string way(columns_to_d - 1, ' ');
  const std::string upper = "A  B                 C" + way + "D    F\n";
  const std::string lower = std::string(29, ' ') + 'E';
  std::string last(upper.find('D'), ' ');
  return upper + lower + "\n\n" + last + R"(G
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 BCDF  highway=residential name=Lantern_Row maxspeed="30 mph"
  w3 CE    highway=service
  w4 DG    highway=service
  )";
}

}  // namespace

TEST_CASE("a small road is counted among small roads alone", "[say][small]") {
  const BuiltTown town = town_of(std::string(access_roads) + "w4 FJ highway=residential\n", 10);
  CHECK(said_between(town, "ABCEGDCBA") ==
        Texts{"take the first small road on the right", "at the end of the road turn left"});
  CHECK(said_between(town, "ABCDGECBA")[0] == "take the second small road on the right");
}

TEST_CASE("a road passed by small ones is counted without them", "[say][small]") {
  const BuiltTown town =
      town_of(std::string(access_roads) + "w4 FJ highway=residential name=Hay_Street\n", 40);
  // F is a bend: the street goes on round it.
  CHECK(said_between(town, "ABCDFJFDCBA")[0] == "turn the car round where it is safe");
}

TEST_CASE("a small road ahead of where ours ends is told as one", "[say][small]") {
  const BuiltTown town = town_of(R"(
             D
    A  B     C    F
             E
  w1 AB    highway=residential name=Lantern_Row
  w50 BC   highway=residential name=Lantern_Row
  w2 DCE   highway=secondary ref=B9951
  w3 CF    highway=service
  )",
                                 100);
  CHECK(said_between(town, "ABCFCBA")[0] == "at the junction follow the small road ahead");
  // The way back: from a small road the roads are roads.
  CHECK(said_between(town, "ABCECBA")[0] == "at the end of the road turn right");
}

TEST_CASE("where the car is turned round what follows close is said before driving on",
          "[say][small]") {
  const BuiltTown town = town_of(R"(
    A  B     C    D
             E
  w1 AB    highway=residential name=Lantern_Row
  w50 BCD  highway=residential name=Lantern_Row
  w2 CE    highway=residential name=Mill_Orchard
  )",
                                 30);
  const auto rows = rows_of(town, "ABCECBA");
  REQUIRE(rows.size() > 3);
  CHECK(rows[2].say == "turn the car round where it is safe");
  CHECK(rows[2].briefs == Texts{"say the next before driving on"});
  CHECK_FALSE(rows[3].joined_to_previous);
}

TEST_CASE("what may be counted or not is passed before one speaks, while there is time",
          "[say][small]") {
  const auto rows = rows_of(town_of(almost_ahead(9), 20), "ABCDGDCBA");
  REQUIRE(rows.size() > 2);
  CHECK(rows[1].say == "take the first small road on the right");
  CHECK(rows[1].speak_m > 134);  // ten seconds at the limit
  CHECK(rows[1].speak_m < 180);  // behind C
}

TEST_CASE("a small road one turns into is told from one hardly off the way", "[say][small]") {
  const auto rows = rows_of(town_of(almost_ahead(7), 20), "ABCDGDCBA");
  REQUIRE(rows.size() > 2);
  CHECK(rows[1].say == "turn right into the small road");
}

}  // namespace loopwright::test
