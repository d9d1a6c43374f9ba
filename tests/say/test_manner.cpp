// Another way of speaking: the sides by who sits there, and another table of words.
#include <catch2/catch.hpp>

#include "say/cards.hpp"
#include "say/said.hpp"
#include "support/tables_of_words.hpp"

namespace loopwright::test {
namespace {

BuiltTown end_of_road(std::string_view region) {
  return town_of(R"(
             D
    A  B     C
             E
  w1 AB    highway=residential name=Lantern_Row
  w50 BC   highway=residential name=Lantern_Row
  w2 DCE   highway=residential name=Mill_Orchard
  )",
                 100, region);
}

Texts said_in(const BuiltTown& town, const say::Manner& manner) {
  const wish::Answer answer = honest_answer(town, "ABCDCBA");
  Texts texts;
  for (const say::Row& row : say::say_loop(town.roads(), answer.loops[0], manner))
    texts.push_back(row.say);
  return texts;
}

}  // namespace

TEST_CASE("for who mixes left and right the instructor's side is my side", "[say][manner]") {
  CHECK(said_in(end_of_road("GB-ENG"), {nullptr, say::Sides::my_your}) ==
        Texts{"leave Lantern Row towards Mill Orchard", "at the end of the road turn my side",
              "turn the car round where it is safe", "take the first road on your side",
              "pull up on my side when it's safe"});
}

TEST_CASE("where one drives on the right, the instructor sits on the right", "[say][manner]") {
  CHECK(said_in(end_of_road("LI"), {nullptr, say::Sides::my_your}) ==
        Texts{"leave Lantern Row towards Mill Orchard", "at the end of the road turn your side",
              "turn the car round where it is safe", "take the first road on my side",
              "pull up on my side when it's safe"});
}

TEST_CASE("another language is another table", "[say][manner]") {
  const std::string table = foreign_table();
  const say::Words words{table};
  REQUIRE(words.unfit_for(say::Words()).empty());
  const Texts texts = said_in(end_of_road("GB-ENG"), {&words, say::Sides::left_right});
  CHECK(texts[1] == "xxat the end of the road xturn xleft");
  CHECK(texts[3] == "xtake the xfirst road on xthe right");
  for (const std::string& text : texts) CHECK(text.starts_with("x"));
  CHECK(say::say_distance(300, SpeedUnit::kmh, words) == "x300 m");
}

TEST_CASE("a pupil puts my side back into left or right", "[say][manner]") {
  const BuiltTown town = end_of_road("GB-ENG");
  say::Row row;
  row.say = "take the first road on your side, bear your side";
  CHECK(as_printed(town.roads(), {row})[0].say == "take the first road on the right, bear right");
  row.say = "follow the road round to my side";
  CHECK(as_printed(town.roads(), {row})[0].say == "follow the road round to the left");
}

}  // namespace loopwright::test
