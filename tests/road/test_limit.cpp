// Figures: Highway Code rule 124 (text of June 2024). Wales: the Restricted Roads (20 mph Speed
// Limit) (Wales) Order 2022, in force 17 September 2023. Ireland: from memory.
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "loopwright/base/table.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::road {
namespace {

constexpr Date lesson{2026, 11, 28};
constexpr Date eve{2023, 9, 16};
constexpr Date change{2023, 9, 17};

LimitLaw law_of(std::string_view region, std::optional<Date> map_date = lesson) {
  return {find_region(region).value(), map_date};
}

LimitFact fact(LimitRule rule, LimitConfidence confidence = LimitConfidence::certain) {
  LimitFact made;
  made.rule = rule;
  made.confidence = confidence;
  return made;
}

LimitFact number(LimitRule rule, int value, SpeedUnit unit = SpeedUnit::mph) {
  LimitFact made = fact(rule);
  made.value = static_cast<std::uint16_t>(value);
  made.unit = unit;
  return made;
}

constexpr SpeedUnit mph = SpeedUnit::mph;
constexpr SpeedUnit kmh = SpeedUnit::kmh;
constexpr auto certain = LimitConfidence::certain;
constexpr auto inferred = LimitConfidence::inferred;
constexpr auto check_sign = LimitConfidence::check;

TEST_CASE("a road of which nothing is known has the general rural limit for times", "[road]") {
  const LimitFact nothing;
  CHECK(law_of("GB-ENG").on(nothing, lesson) == LimitOnDay{60, mph});
  CHECK(law_of("IE").on(nothing, lesson) == LimitOnDay{80, kmh});
  CHECK(law_of("LI").on(nothing, lesson) == LimitOnDay{80, kmh});
  CHECK(law_of("US").on(nothing, lesson) == LimitOnDay{55, mph});
}

TEST_CASE("a signed number is that number, anywhere, as sure as its tag", "[road]") {
  for (const char* region : {"GB-ENG", "GB-WLS", "IE", "LI"}) {
    INFO(region);
    const LimitOnDay forty = law_of(region).on(number(LimitRule::signed_value, 40), lesson);
    CHECK(forty == LimitOnDay{40, mph});
    CHECK(forty.confidence == certain);
  }
  CHECK(law_of("LI").on(number(LimitRule::zone_other, 30, kmh), lesson) == LimitOnDay{30, kmh});
}

TEST_CASE("the national limits of Great Britain are those of the Highway Code", "[road]") {
  for (const char* region : {"GB-ENG", "GB-WLS", "GB-SCT", "GB-NIR"}) {
    INFO(region);
    const LimitLaw law = law_of(region);
    CHECK(law.on(fact(LimitRule::national_single), lesson) == LimitOnDay{60, mph});
    CHECK(law.on(fact(LimitRule::national_dual), lesson) == LimitOnDay{70, mph});
    CHECK(law.on(fact(LimitRule::motorway), lesson) == LimitOnDay{70, mph});
    CHECK(law.on(fact(LimitRule::national_single), lesson).confidence == certain);
  }
}

TEST_CASE("a road with lamps is 30 in England, Scotland and Northern Ireland", "[road]") {
  for (const char* region : {"GB-ENG", "GB-SCT", "GB-NIR"}) {
    INFO(region);
    CHECK(law_of(region).on(fact(LimitRule::restricted), lesson) == LimitOnDay{30, mph});
    CHECK(law_of(region).on(fact(LimitRule::restricted, inferred), lesson).confidence == inferred);
  }
}

TEST_CASE("a road with lamps is 20 in Wales from 17 September 2023 and 30 the day before",
          "[road]") {
  const LimitLaw law = law_of("GB-WLS");
  CHECK(law.on(fact(LimitRule::restricted), eve) == LimitOnDay{30, mph});
  CHECK(law.on(fact(LimitRule::restricted), change) == LimitOnDay{20, mph});
  CHECK(law.on(fact(LimitRule::restricted), lesson) == LimitOnDay{20, mph});
}

TEST_CASE("a Welsh 20 that only lamps speak for is to be checked, since some roads are kept at 30",
          "[road]") {
  const LimitLaw law = law_of("GB-WLS");
  CHECK(law.on(fact(LimitRule::restricted, inferred), lesson).confidence == check_sign);
  CHECK(law.on(fact(LimitRule::restricted, certain), lesson).confidence == certain);
  CHECK(law.on(fact(LimitRule::restricted, inferred), eve).confidence == inferred);
}

TEST_CASE("a Welsh 20 from a map older than the law, or of unknown age, is to be checked",
          "[road]") {
  const LimitFact restricted = fact(LimitRule::restricted);
  CHECK(law_of("GB-WLS", eve).on(restricted, lesson).confidence == check_sign);
  CHECK(law_of("GB-WLS", std::nullopt).on(restricted, lesson).confidence == check_sign);
  CHECK(law_of("GB-WLS", change).on(restricted, lesson).confidence == certain);
}

TEST_CASE("a Welsh 30 mapped on a road with houses is 20 now, to be checked", "[road]") {
  // The number that was mapped stays in the fact; the rule, not the number, decides.
  const LimitFact mapped = number(LimitRule::restricted, 30);
  const LimitOnDay now = law_of("GB-WLS", eve).on(mapped, lesson);
  CHECK(now == LimitOnDay{20, mph});
  CHECK(now.confidence == check_sign);
}

TEST_CASE("a plain Welsh 30 of an older map stays 30, to be checked", "[road]") {
  const LimitFact thirty = number(LimitRule::signed_value, 30);
  const auto seen = [&](std::optional<Date> map_date, Date day) {
    const LimitOnDay limit = law_of("GB-WLS", map_date).on(thirty, day);
    CHECK(limit == LimitOnDay{30, mph});
    return limit.confidence;
  };
  CHECK(seen(eve, lesson) == check_sign);
  CHECK(seen(std::nullopt, lesson) == check_sign);
  CHECK(seen(change, lesson) == certain);
  CHECK(seen(eve, eve) == certain);
}

TEST_CASE("the age of an area's map is that of its newest data", "[road]") {
  const auto thirty_seen = [](std::string_view timestamp) {
    AreaInfo info;
    info.region = find_region("GB-WLS").value();
    info.map_timestamp = timestamp;
    return law_of(info).on(number(LimitRule::signed_value, 30), lesson).confidence;
  };
  CHECK(thirty_seen("") == check_sign);
  CHECK(thirty_seen("2023-09-16T23:59:59Z") == check_sign);
  CHECK(thirty_seen("2023-09-17T00:00:00Z") == certain);
}

TEST_CASE("a change in Wales casts no doubt on a 40, on a 20 zone or on England", "[road]") {
  CHECK(law_of("GB-WLS", eve).on(number(LimitRule::signed_value, 40), lesson).confidence ==
        certain);
  CHECK(law_of("GB-WLS", eve).on(number(LimitRule::zone_twenty, 20), lesson).confidence == certain);
  CHECK(law_of("GB-WLS", eve).on(fact(LimitRule::national_dual), lesson).confidence == certain);
  CHECK(law_of("GB-ENG", eve).on(number(LimitRule::signed_value, 30), lesson).confidence ==
        certain);
}

TEST_CASE("Ireland's local roads are 60 from 7 February 2025", "[road]") {
  const LimitLaw law = law_of("IE");
  CHECK(law.on(fact(LimitRule::rural_minor), {2025, 2, 6}) == LimitOnDay{80, kmh});
  CHECK(law.on(fact(LimitRule::rural_minor), {2025, 2, 7}) == LimitOnDay{60, kmh});
  CHECK(law.on(fact(LimitRule::rural), lesson) == LimitOnDay{80, kmh});
  CHECK(law.on(fact(LimitRule::urban), lesson) == LimitOnDay{50, kmh});
  CHECK(law.on(fact(LimitRule::motorway), lesson) == LimitOnDay{120, kmh});
}

TEST_CASE("a default of a country whose law we don't hold is to be checked", "[road]") {
  const LimitLaw law = law_of("LI");
  CHECK(law.on(fact(LimitRule::urban), lesson) == LimitOnDay{50, kmh});
  CHECK(law.on(fact(LimitRule::urban), lesson).confidence == check_sign);
}

TEST_CASE("no limit and walking pace are not doubted where they are mapped", "[road]") {
  const LimitOnDay none = law_of("LI").on(fact(LimitRule::no_limit), lesson);
  CHECK(none == LimitOnDay{0, kmh});
  CHECK(none.confidence == certain);
  CHECK(none.metres_per_second() == Approx(130 / 3.6));
  CHECK(law_of("LI").on(fact(LimitRule::walk), lesson) == LimitOnDay{7, kmh});
  CHECK(law_of("GB-ENG").on(fact(LimitRule::walk), lesson) == LimitOnDay{5, mph});
}

TEST_CASE("a mile is 1609.344 m", "[road]") {
  CHECK(LimitOnDay{30, mph}.metres_per_second() == Approx(30 * 1609.344 / 3600));
  CHECK(LimitOnDay{50, kmh}.metres_per_second() == Approx(50 / 3.6));
}

TEST_CASE("how sure a limit is reads as it is written", "[road]") {
  for (const auto confidence : {certain, inferred, check_sign}) {
    CHECK(parse_limit_confidence(name(confidence)) == confidence);
  }
  CHECK(name(check_sign) == "check");
  CHECK_FALSE(parse_limit_confidence(""));
}

TEST_CASE("every country has a number for every rule", "[road]") {
  const auto first = static_cast<int>(LimitRule::unknown);
  const auto last = static_cast<int>(LimitRule::walk);
  for (const char* region : {"GB-ENG", "GB-WLS", "GB-SCT", "GB-NIR", "IE", "LI", "US"}) {
    const LimitLaw law = law_of(region);
    for (int rule = first; rule <= last; ++rule) {
      INFO(region << " rule " << rule);
      CHECK_NOTHROW(law.on(fact(static_cast<LimitRule>(rule)), {1990, 1, 1}));
    }
  }
}

TEST_CASE("every region with rows of its own is one the tool knows as such", "[road]") {
  std::set<std::string> regions;
  for (const auto& row : read_table(rule_text("limits"))) {
    REQUIRE(row.size() == 5);
    if (row[0] != "*") regions.emplace(row[0]);
  }
  CHECK(regions.size() == 5);
  for (const auto& region : regions) {
    INFO(region);
    REQUIRE(find_region(region));
    CHECK(find_region(region)->own_rules);
  }
}

TEST_CASE("a number that the instructor saw isn't doubted for the map's age", "[road]") {
  const LimitLaw law(find_region("GB-WLS").value(), Date{2022, 1, 1});
  LimitFact thirty = fact(LimitRule::signed_value);
  thirty.value = 30, thirty.unit = SpeedUnit::mph;
  CHECK(law.on(thirty, {2026, 11, 28}).confidence == LimitConfidence::check);
  thirty.confidence = LimitConfidence::noted;
  CHECK(law.on(thirty, {2026, 11, 28}).confidence == LimitConfidence::noted);
  CHECK(parse_limit_confidence("noted") == LimitConfidence::noted);
}

}  // namespace
}  // namespace loopwright::road
