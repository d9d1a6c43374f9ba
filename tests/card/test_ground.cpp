// What a sheet asks to look at on the ground, and how it tells what was seen there.
#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

#include "card/card_town.hpp"
#include "loopwright/card/ground.hpp"

namespace loopwright::test {
namespace {

/// A drive past a bus lane with hours and junctions whose give-way is inferred.
struct Driven {
  BuiltTown town = built_card_town();
  road::Roads roads = town.roads();
  wish::Answer answer = card_answer(town);
  hours::Setting setting = setting_of(roads);
  [[nodiscard]] card::Lesson lesson() const {
    return {roads, answer, answer.loops.front(), setting};
  }
};

TEST_CASE("each thing to look at has its rows and facts, each fact once", "[card][ground]") {
  const Driven driven;
  const auto items = card::to_check(driven.lesson());
  REQUIRE_FALSE(items.empty());
  std::set<std::pair<std::string, std::string>> facts;
  for (const card::GroundItem& item : items) {
    CHECK_FALSE(item.words.empty());
    CHECK_FALSE(item.rows.empty());
    CHECK(std::is_sorted(item.rows.begin(), item.rows.end()));
    for (const wish::MapFact& fact : item.facts)
      CHECK((facts.insert({fact.what, fact.object}).second || fact.what.starts_with("hours ")));
  }
  CHECK(items.front().words.find("bus lane") != std::string::npos);
  CHECK(items.front().facts.front().map_text == "Mo-Sa 16:00-19:00");
}

TEST_CASE("the same drive asks for the same things", "[card][ground]") {
  const Driven driven;
  const auto once = card::to_check(driven.lesson()), twice = card::to_check(driven.lesson());
  REQUIRE(once.size() == twice.size());
  for (std::size_t k = 0; k < once.size(); ++k) {
    CHECK(once[k].words == twice[k].words);
    CHECK(once[k].facts == twice[k].facts);
  }
}

TEST_CASE("a sheet lists what is to be looked at by its letter, and tells what was seen",
          "[card][ground]") {
  const Driven driven;
  card::Lesson lesson = driven.lesson();
  const std::string plain = card::write_text(lesson);
  CHECK(plain.find("To look at on the ground") == std::string::npos);
  CHECK(plain.find("Not sure in the map") != std::string::npos);
  std::vector<wish::GroundMark> marks(card::to_check(lesson).size());
  marks[0] = {"", "seen by you three weeks ago"};
  for (std::size_t k = 1; k < marks.size(); ++k) marks[k] = {std::string(1, char('A' + k - 1)), ""};
  lesson.ground = &marks;
  const std::string told = card::write_text(lesson);
  CHECK(told.find("    seen by you three weeks ago") != std::string::npos);
  CHECK(told.find("\n  A: ") != std::string::npos);
  CHECK(told.find("Seen by you lately, so not in the list: 1.") != std::string::npos);
  CHECK(told.find("Not sure in the map") == std::string::npos);
}

}  // namespace
}  // namespace loopwright::test
