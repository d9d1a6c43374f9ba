// The route card as plain text.
#include <catch2/catch.hpp>

#include "card/card_town.hpp"
#include "loopwright/card/card.hpp"
#include "support/golden.hpp"

namespace loopwright::test {
namespace {

using Catch::Contains;

std::string card_of(const BuiltTown& town, const wish::Answer& answer) {
  return card::write_text({town.roads(), answer, answer.loops[0], {}});
}

/// Columns of the widest line, one for each UTF-8 sequence.
std::ptrdiff_t width_of(const std::string& text) {
  std::ptrdiff_t widest = 0, columns = 0;
  for (const char c : text) {
    if (c == '\n') columns = 0;
    if (c != '\n' && (static_cast<unsigned char>(c) & 0xC0) != 0x80) ++columns;
    widest = std::max(widest, columns);
  }
  return widest;
}

}  // namespace

TEST_CASE("the card of a small town reads as approved", "[card]") {
  const BuiltTown town = built_card_town();
  check_golden("town-card.txt", card_of(town, card_answer(town)));
}

TEST_CASE("the same card where one drives on the right and signs use kilometres", "[card]") {
  BuiltTown town = built_card_town("LI");
  const wish::Answer answer = honest_answer(town, "EABCGxHLOKGCBAE");
  const std::string card = card_of(town, answer);
  CHECK_THAT(card, Contains("Pull up on the right when it's safe"));
  CHECK_THAT(card, !Contains(" yd") && !Contains(" mile") && Contains(" m,"));
}

TEST_CASE("a card says in full for when it is", "[card]") {
  const BuiltTown town = built_card_town();
  wish::Answer answer = card_answer(town);
  CHECK_THAT(card_of(town, answer), Contains("Saturday 28 November 2026, 15:00"));
  CHECK_THAT(card_of(town, answer), Contains("back by 15:15"));
  answer.wish.reserve_minutes = 5;
  CHECK_THAT(card_of(town, answer), Contains("back by 15:10"));
}

TEST_CASE("where the sun doesn't rise that day a card says that it is dark", "[card]") {
  mark::RawMap raw = draw_town(card_town, 100);
  // The polar circle lies at 66.56 degrees; on 28 November the sun is 21.4 degrees south (any almanac).
  for (mark::RawNode& node : raw.nodes) node.at.lat_e7 += 160'000'000;
  const BuiltTown town = built_town(raw, "NO");
  const wish::Answer answer = honest_answer(town, "EABCGxHLOKGCBAE");
  const Point door = town.roads().nodes[town.node('E').index()].at;
  const auto card = [&](std::optional<Point> place) {
    const hours::Setting setting = road::setting_of(town.roads().info(), place);
    REQUIRE_FALSE(setting.sun({2026, 11, 28}));
    return card::write_text({town.roads(), answer, answer.loops[0], setting});
  };
  CHECK_THAT(card(door), Contains("dark all through: lights on"));
}

TEST_CASE("a card carries the credit of the map, with its date or without", "[card]") {
  BuiltTown town = built_card_town();
  const wish::Answer answer = card_answer(town);
  CHECK_THAT(card_of(town, answer),
             Contains("map © OpenStreetMap contributors, ODbL, as of 12 November 2026\n"));
  town.built.info.map_timestamp.clear();
  CHECK_THAT(card_of(town, answer),
             Contains("map of unknown date © OpenStreetMap contributors, ODbL\n"));
}

TEST_CASE("a card is never wider than eighty columns", "[card]") {
  std::string drawing(card_town);
  const std::string_view street = "name=Fold_Lane";
  drawing.replace(drawing.find(street), street.size(),
                  "name=The_Very_Long_Lane_Behind_The_Old_Works_Of_The_Quillham_Rope_And_Twine_"
                  "Company_Near_The_Weir");
  const BuiltTown town = built_town(draw_town(drawing, 100), "GB-ENG");
  wish::Answer answer = card_answer(town);
  answer.shortfall.emplace();
  answer.shortfall->why =
      "three roundabouts turned round at don't fit into fifteen minutes from this door, whichever "
      "way one sets off and whatever else is left out";
  answer.shortfall->least_minutes = 23.4;
  CHECK(width_of(card_of(town, answer)) <= 80);
}

TEST_CASE("a card says what fell short, and where the nearest is", "[card]") {
  const BuiltTown town = built_card_town();
  wish::Answer answer = card_answer(town);
  wish::Missing missing{wish::read_want("zebra=3"), 1, "only one is near", {}, 4.2, 18.0};
  answer.shortfall.emplace();
  answer.shortfall->why = "not everything fits";
  answer.shortfall->missing = {missing};
  const std::string card = card_of(town, answer);
  CHECK_THAT(card,
             Contains("What fell short\n  not everything fits\n  zebra 3: 1 found; only one"));
  CHECK_THAT(card, Contains("the nearest is 4 min away") && Contains("needs 18 min\n"));
}

TEST_CASE("a word that is wider than the sheet is cut", "[card]") {
  std::string drawing(card_town);
  const std::string_view street = "name=Fold_Lane";
  drawing.replace(drawing.find(street), street.size(),
                  "name=Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogochllanfairpwllgwyng"
                  "yllgogerychwyrndrobwll");
  const BuiltTown town = built_town(draw_town(drawing, 100), "GB-WLS");
  CHECK(width_of(card_of(town, card_answer(town))) <= 80);
}

TEST_CASE("a card says before its rows who decides", "[card]") {
  const BuiltTown town = built_card_town();
  const std::string card = card_of(town, card_answer(town));
  CHECK(card.find("Plan when parked.") < card.find("====="));
}

TEST_CASE("a drive without a level crossing needs no caution about one", "[card]") {
  const BuiltTown town = built_card_town();
  const wish::Answer answer = honest_answer(town, "EABnpqrzEA");
  const std::string card = card_of(town, answer);
  CHECK_THAT(card, !Contains("evel crossing"));
  CHECK_THAT(card, Contains("your own drive, passes as they come"));
}

}  // namespace loopwright::test
