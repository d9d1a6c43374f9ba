// What of a drive has hours, as the card tells it. Verdicts follow from the hours as written; common
// practice, no outside source.
#include <catch2/catch.hpp>

#include "card/card_town.hpp"
#include "loopwright/card/card.hpp"
#include "loopwright/lanes/passage.hpp"

namespace loopwright::test {
namespace {

using Catch::Contains;

/// The card town with a street's tags replaced, or more tags and lines added.
struct Change {
  std::string_view street, more;
};

BuiltTown town_with(const Change& change, std::string_view lines = "") {
  std::string drawing(card_town);
  const std::size_t at = drawing.find(change.street) + change.street.size();
  drawing.insert(at, " " + std::string(change.more));
  return built_town(draw_town(drawing + std::string(lines), 100), "GB-ENG");
}

constexpr std::string_view round_twice = "EABnpGxHLKJqrzEABnpGxHLKJqrzEA";

std::string card_of(const BuiltTown& town, std::string_view drive = "EABnpGxHLKJqrzEA",
                    const hours::Setting& setting = {}) {
  const wish::Answer answer = honest_answer(town, drive);
  return card::write_text({town.roads(), answer, answer.loops[0], setting});
}

}  // namespace

TEST_CASE("a drive without anything by the hour has no such section", "[card]") {
  const BuiltTown town = built_card_town();
  CHECK_THAT(card_of(town, "EABnpqrzEA"), !Contains("By the hour") && !Contains("Bus lanes"));
}

TEST_CASE("a lane whose hours aren't known is one to keep out of", "[card]") {
  const BuiltTown town = town_with({"name=Fold_Lane", "busway:both=lane"});
  const wish::Answer answer = card_answer(town);
  const std::string card = card::write_text({town.roads(), answer, answer.loops[0], {}});
  CHECK_THAT(card, Contains("hours not known\n"));
  CHECK_THAT(card, Contains("check the plate; unread, keep out"));
  CHECK_THAT(card, Contains("A bus lane whose plate you can't read: keep out."));
}

TEST_CASE("the hours of a lane are told as its own, not as a car's", "[card]") {
  const std::string card = card_of(built_card_town());
  CHECK_THAT(card, Contains("East Way, bus lane on the left"));
  CHECK_THAT(card, Contains("in force Monday to Saturday, four till seven\n"));
  CHECK_THAT(card, Contains("cars may use it, in force from 16:00\n"));
}

TEST_CASE("a street for buses is called one, and what to do at it follows", "[card]") {
  const BuiltTown gated = town_with(
      {"name=Mill_Orchard", "bus=yes motor_vehicle:conditional=\"no @ (Mo-Fr 07:00-10:00)\""});
  const std::string card = card_of(gated);
  CHECK_THAT(card, Contains("Mill Orchard, bus-only street\n"));
  CHECK_THAT(card, Contains("in force Monday to Friday, seven till ten"));
  CHECK_THAT(card, Contains("cars may drive through\n"));
}

TEST_CASE("a street driven twice under one rule is told once, with both times", "[card]") {
  const BuiltTown town =
      town_with({"name=Mill_Orchard", "motor_vehicle:conditional=\"no @ (Mo-Fr 08:00-09:00)\""});
  const std::string card = card_of(town, round_twice);
  const std::size_t first = card.find("shut Monday to Friday, eight till nine");
  REQUIRE(first != std::string::npos);
  CHECK(card.find("shut Monday to Friday", first + 1) == std::string::npos);
  CHECK_THAT(card, Catch::Matches("[^]*passed 15:[0-9]+ to 15:[0-9]+ and 15:[0-9]+ to 15:[0-9]+\\s+"
                                  "\\(rows [0-9]+, [0-9]+\\): may be driven[^]*"));
}

TEST_CASE("a turn with hours is told without a tag", "[card]") {
  const BuiltTown town =
      town_with({"name=Mill_Orchard", ""},
                "  r1 - from=w4 via=A to=w1 restriction:conditional=\"no_right_turn @ (Mo-Sa "
                "07:00-10:00)\"\n");
  const std::string card = card_of(town, "EABnpqrzEA");
  CHECK_THAT(card,
             Contains("Signal Terrace into Lantern Row\n    no right turn Monday to Saturday, "
                      "seven till ten\n"));
  CHECK_THAT(card, !Contains("restriction"));
}

TEST_CASE("a card that drives a shut street says so before all else, in each form", "[card]") {
  const BuiltTown town =
      town_with({"name=Mill_Orchard", "motor_vehicle:conditional=\"no @ (Sa 15:00-16:00)\""});
  const wish::Answer answer = honest_answer(town, "EABnpGxHLKJqrzEA");
  const wish::Loop& loop = answer.loops[0];
  const std::string said = card::write_barred({town.roads(), answer, loop, {}});
  CHECK_THAT(said, Contains("Don't drive this card as printed at this time: at 15:"));
  CHECK_THAT(said, Contains("it passes Mill Orchard, which is shut then or may be."));
  const std::string card = card::write_text({town.roads(), answer, loop, {}});
  CHECK(card.find("Don't drive this card") < card.find("Goal:"));
  CHECK_THAT(card::write_gpx({town.roads(), answer, loop, {}}), Contains("Don't drive this card"));
  CHECK_THAT(card::write_geojson({town.roads(), answer, loop, {}}),
             Contains("Don't drive this card"));
}

TEST_CASE("a card is barred exactly when the drive breaks a rule by the hour", "[card]") {
  for (const std::string_view hours :
       {"no @ (Sa 15:00-16:00)", "no @ (Sa 08:00-09:00)", "no @ (SH)", "no @ (PH)", "no @ (?)",
        "no @ (Sa 15:05-15:07)", "no @ (Sa 14:00-14:59)"}) {
    const BuiltTown town =
        town_with({"name=East_Way", "motor_vehicle:conditional=\"" + std::string(hours) + "\""});
    const wish::Answer answer = honest_answer(town, "EABnpGxHLKJqrzEA");
    const wish::Loop& loop = answer.loops[0];
    CAPTURE(hours);
    CHECK(card::write_barred({town.roads(), answer, loop, {}}).empty() ==
          lanes::breaches_on(town.roads(), loop, {}).empty());
  }
}

TEST_CASE("a street that is shut in doubt isn't told to open again", "[card]") {
  const BuiltTown town =
      town_with({"name=East_Way", "motor_vehicle:conditional=\"no @ (Sa 14:00-16:00; SH off)\""});
  CHECK_THAT(card_of(town), Contains("keep out (") && !Contains("shut until"));
}

TEST_CASE("a card for a bank holiday names it", "[card]") {
  const BuiltTown town = built_card_town();
  const hours::Setting setting("GB-ENG", "Europe/London", {});
  wish::Answer answer = card_answer(town);
  CHECK_THAT(card::write_text({town.roads(), answer, answer.loops[0], setting}),
             !Contains("Bank holiday"));
  answer.loops[0].start = {civil_seconds({{2026, 12, 28}, 15, 0, 0}), 0};
  CHECK_THAT(card::write_text({town.roads(), answer, answer.loops[0], setting}),
             Contains("Bank holiday: Boxing Day"));
}

TEST_CASE("the time to be back is by the clock as it is changed on the way", "[card]") {
  const BuiltTown town = built_card_town();
  const hours::Setting setting("GB-ENG", "Europe/London", {});
  wish::Answer answer = card_answer(town);
  const auto utc = [](Date date) { return Instant{civil_seconds({date, 0, 50, 0}), 0}; };
  answer.loops[0].start = setting.on_clock(utc({2026, 10, 25}));
  CHECK_THAT(card::write_text({town.roads(), answer, answer.loops[0], setting}),
             Contains("back by 01:05, clocks put back"));
  answer.loops[0].start = setting.on_clock(utc({2026, 3, 29}));
  CHECK_THAT(card::write_text({town.roads(), answer, answer.loops[0], setting}),
             Contains("back by 02:05, clocks put forward"));
}

}  // namespace loopwright::test
