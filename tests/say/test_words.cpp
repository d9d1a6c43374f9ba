// The table of words, and what may never be spoken.
#include <catch2/catch.hpp>

#include "loopwright/say/words.hpp"

namespace loopwright::test {

using say::Words;

TEST_CASE("an empty table of words has no row", "[say]") {
  CHECK_FALSE(Words("").has("pull_up"));
  CHECK_THROWS_WITH(Words("").at("pull_up"), "words: no row pull_up");
}

TEST_CASE("another wording is another table", "[say]") {
  const Words words("pull_up | stop on the {side}, please\nside.left | near side");
  CHECK(words.fill("pull_up", {{"side", std::string(words.at("side.left"))}}) ==
        "stop on the near side, please");
}

TEST_CASE("a table that lacks rows, or has a gap nothing fills, can't stand for ours", "[say]") {
  const Words ours("fork | keep {side}\npull_up | stop\nside.left | left | the left");
  CHECK(Words("fork | {side}\npull_up | halt\nside.left | a | b").unfit_for(ours).empty());
  CHECK(Words("fork | {side}\nside.left | a | b").unfit_for(ours) == "it has no words for pull_up");
  CHECK(Words("pull_up | halt\nside.left | a").unfit_for(ours) ==
        "it has no words for fork and side.left");
  CHECK(Words("fork | {sdie}\npull_up | halt\nside.left | a | b").unfit_for(ours) ==
        "nothing fills {sdie} in the words for fork");
  CHECK(Words("fork | {side\npull_up | halt\nside.left | a | b").unfit_for(ours) ==
        "nothing fills {side in the words for fork");
  CHECK(Words("fork | a\x1b\npull_up | b\nside.left | a | b").unfit_for(ours) ==
        "the words for fork can't be printed");
  CHECK(Words("x | y").unfit_for(Words()).ends_with(" more"));
  CHECK(Words().unfit_for(Words()).empty());
}

TEST_CASE("several of a kind have a word of their own when the table gives one", "[say]") {
  const Words words("zebra | zebra | {n} zebras\nmud | mud");
  CHECK(words.count("zebra", 1) == "zebra");
  CHECK(words.count("zebra", 3) == "3 zebras");
  CHECK(words.count("mud", 3) == "mud");
}

TEST_CASE("a street that looks like a gap to fill is left as it is", "[say]") {
  CHECK(Words("into | into {street} at {n}").fill("into", {{"street", "{n}"}, {"n", "2"}}) ==
        "into {n} at 2");
}

TEST_CASE("roads and exits are counted in words up to twelve", "[say]") {
  CHECK(Words().nth(1) == "first");
  CHECK(Words().nth(3) == "third");
  CHECK(Words().nth(12) == "twelfth");
  CHECK(Words().nth(13) == "13th");
}

TEST_CASE("nothing in the table may be heard as going without looking, or sends into a drive",
          "[say]") {
  // The two phrases: after the examiners' own guidance.
  for (const auto& row : read_table(rule_text("words")))
    for (const std::string_view cell : row) {
      CAPTURE(row[0]);
      CHECK(cell.find("straight on") == std::string_view::npos);
      CHECK(cell.find("turning") == std::string_view::npos);
      CHECK(cell.find("next road") == std::string_view::npos);
      CHECK(cell.find(" open") == std::string_view::npos);  // of a bus lane: heard the other way
    }
}

TEST_CASE("words are counted as a listener hears them", "[say]") {
  CHECK(say::spoken_words("") == 0);
  CHECK(say::spoken_words("  at the mini-roundabout turn right, second exit ") == 7);
}

TEST_CASE("a sheet makes the first letter a capital, if it is a plain one", "[say]") {
  CHECK(say::capitalised("turn left") == "Turn left");
  CHECK(say::capitalised("über die Brücke") == "über die Brücke");
  CHECK(say::capitalised("") == "");
}

TEST_CASE("a road with two names or numbers is said with an 'and'", "[say]") {
  CHECK(say::spoken_name("") == "");
  CHECK(say::spoken_name("Mill Street") == "Mill Street");
  CHECK(say::spoken_name("A48;A449") == "A48 and A449");
  CHECK(say::spoken_name("A48; A449;A48;") == "A48 and A449");
  CHECK(say::spoken_name("Mill\nStreet\x1b") == "Mill Street\xEF\xBF\xBD");
}

TEST_CASE("a table with a row that says nothing is our own mistake", "[say]") {
  CHECK_THROWS_WITH(Words("pull_up"), "words: no text for pull_up");
  CHECK_THROWS_WITH(Words("a | b\na | c"), "words: two rows for a");
  CHECK_THROWS_WITH(Words("a | b {side").fill("a", {}), "words: a brace is not closed");
  CHECK_THROWS_WITH(Words("a | b {side}").fill("a", {}), "words: nothing for {side}");
}

}  // namespace loopwright::test
