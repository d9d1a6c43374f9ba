// Bank holidays: GOV.UK's list of bank holidays and the acts named in src/rules/bank_holidays.txt; all
// days of 2024 to 2030 are held against an npm package in tests/real. The sun: npm suncalc 1.9.0,
// times of civil twilight, by node, on 28 November 2026. Clock changes: tz database, Europe/London.
#include <catch2/catch.hpp>

#include <cstdlib>

#include "loopwright/base/error.hpp"
#include "loopwright/hours/setting.hpp"

namespace loopwright::hours {
namespace {

const Point greenwich = point_from_degrees(51.4779, 0.0);
const Point edinburgh = point_from_degrees(55.9533, -3.1883);

Setting london_clock(std::string_view region) {
  return Setting(region, "Europe/London", greenwich);
}

void check_sun(const Setting& setting, Date day, const SunTimes& expected) {
  const auto sun = setting.sun(day);
  REQUIRE(sun);
  constexpr int most_off = 1;  // minute; the two work with different series
  CHECK(std::abs(sun->dawn.value() - expected.dawn.value()) <= most_off);
  CHECK(std::abs(sun->sunrise - expected.sunrise) <= most_off);
  CHECK(std::abs(sun->sunset - expected.sunset) <= most_off);
  CHECK(std::abs(sun->dusk.value() - expected.dusk.value()) <= most_off);
}

constexpr int at(int hour, int minute) {
  return hour * 60 + minute;
}

}  // namespace

TEST_CASE("nothing is known without a region, a zone and a place", "[hours]") {
  const Setting none;
  CHECK(none.bank_holiday({2026, 12, 25}) == Tri::unknown);
  CHECK(none.bank_holiday_name({2026, 12, 25}).empty());
  CHECK(none.school_holiday({2026, 12, 25}) == Tri::unknown);
  CHECK_FALSE(none.sun({2026, 12, 25}));
  CHECK(none.on_clock({0, 3600}) == Instant{0, 0});
  CHECK_FALSE(none.next_clock_change({0, 0}));
}

TEST_CASE("St Andrew's Day is a bank holiday in Scotland alone", "[hours]") {
  CHECK(london_clock("GB-SCT").bank_holiday({2026, 11, 30}) == Tri::yes);
  CHECK(london_clock("GB-SCT").bank_holiday_name({2026, 11, 30}) == "St Andrew's Day");
  for (const auto* region : {"GB-ENG", "GB-WLS", "GB-NIR", "IE"})
    CHECK(london_clock(region).bank_holiday({2026, 11, 30}) == Tri::no);
}

TEST_CASE("a bank holiday on a Sunday has its substitute on the Monday", "[hours]") {
  CHECK(london_clock("GB-ENG").bank_holiday_name({2026, 12, 28}) == "Boxing Day (substitute day)");
  CHECK(london_clock("GB-NIR").bank_holiday({2026, 7, 13}) == Tri::yes);
  // 2027: Christmas on a Saturday, Boxing Day on a Sunday.
  CHECK(london_clock("GB-ENG").bank_holiday({2027, 12, 27}) == Tri::yes);
  CHECK(london_clock("GB-ENG").bank_holiday({2027, 12, 28}) == Tri::yes);
  CHECK(london_clock("GB-ENG").bank_holiday({2027, 12, 29}) == Tri::no);
  // St Andrew's Day 2030 is a Saturday: the Monday instead.
  CHECK(london_clock("GB-SCT").bank_holiday({2030, 11, 30}) == Tri::no);
  CHECK(london_clock("GB-SCT").bank_holiday({2030, 12, 2}) == Tri::yes);
}

TEST_CASE("the summer bank holiday is in August's first week in Scotland and Ireland", "[hours]") {
  CHECK(london_clock("GB-SCT").bank_holiday({2026, 8, 3}) == Tri::yes);
  CHECK(london_clock("GB-SCT").bank_holiday({2026, 8, 31}) == Tri::no);
  CHECK(london_clock("GB-ENG").bank_holiday({2026, 8, 31}) == Tri::yes);
  CHECK(Setting("IE", "Europe/Dublin", {}).bank_holiday({2026, 8, 3}) == Tri::yes);
  CHECK(Setting("IE", "Europe/Dublin", {}).bank_holiday({2026, 2, 2}) == Tri::yes);
}

TEST_CASE("Scotland's day of the World Cup is in the table", "[hours]") {
  // Royal Proclamation given on 3 February 2026.
  CHECK(london_clock("GB-SCT").bank_holiday({2026, 6, 15}) == Tri::yes);
  CHECK(london_clock("GB-ENG").bank_holiday({2026, 6, 15}) == Tri::no);
}

TEST_CASE("bank holidays of other countries and other years aren't known", "[hours]") {
  CHECK(Setting("LI", "Europe/Vaduz", {}).bank_holiday({2026, 1, 1}) == Tri::unknown);
  CHECK(london_clock("GB-ENG").bank_holiday({2023, 12, 25}) == Tri::unknown);
  CHECK(london_clock("GB-ENG").bank_holiday({2036, 1, 1}) == Tri::unknown);
  CHECK(london_clock("GB-ENG").bank_holiday({2035, 12, 25}) == Tri::yes);
}

TEST_CASE("the sun rises and sets as suncalc says, on the clock of the day", "[hours]") {
  const Setting london = london_clock("GB-ENG");
  check_sun(london, {2026, 6, 21}, {at(3, 55), at(4, 43), at(21, 21), at(22, 9)});
  check_sun(london, {2026, 12, 21}, {at(7, 23), at(8, 3), at(15, 53), at(16, 33)});
  check_sun(london, {2026, 3, 29}, {at(6, 9), at(6, 42), at(19, 28), at(20, 2)});
  const Setting scotland("GB-SCT", "Europe/London", edinburgh);
  check_sun(scotland, {2026, 6, 21}, {at(3, 24), at(4, 26), at(22, 3), at(23, 5)});
  check_sun(scotland, {2026, 11, 28}, {at(7, 29), at(8, 14), at(15, 47), at(16, 32)});
  // Asked again it is remembered, and the same.
  check_sun(scotland, {2026, 11, 28}, {at(7, 29), at(8, 14), at(15, 47), at(16, 32)});
}

TEST_CASE("far north dusk comes after midnight, or not at all", "[hours]") {
  // npm suncalc: Lerwick, 21 June 2026: dusk at 00:25 on the 22nd.
  const Setting lerwick("GB-SCT", "Europe/London", point_from_degrees(60.155, -1.145));
  const auto midsummer = lerwick.sun({2026, 6, 21});
  REQUIRE(midsummer);
  CHECK(std::abs(midsummer->dusk.value() - at(24, 25)) <= 2);
  const Setting unst("GB-SCT", "Europe/London", point_from_degrees(60.85, -0.87));
  const auto light_night = unst.sun({2026, 6, 21});
  REQUIRE(light_night);
  CHECK_FALSE(light_night->dusk);
  CHECK(light_night->sunset > at(22, 0));
}

TEST_CASE("where the sun doesn't set nothing is said of it", "[hours]") {
  const Setting tromso("NO", "Europe/Oslo", point_from_degrees(69.65, 18.96));
  CHECK_FALSE(tromso.sun({2026, 6, 21}));
}

TEST_CASE("the clock on the wall goes back on 25 October 2026", "[hours]") {
  const Setting london = london_clock("GB-ENG");
  const Instant before{1792889999, 0}, after{1792890000, 0};  // 01:00 UTC
  CHECK(write_time(london.on_clock(before)) == "2026-10-25T01:59:59+01:00");
  CHECK(write_time(london.on_clock(after)) == "2026-10-25T01:00:00+00:00");
  const auto change = london.next_clock_change(before);
  REQUIRE(change);
  CHECK(*change == Instant{1792890000, 0});
}

TEST_CASE("the clock on the wall goes on on 29 March 2026", "[hours]") {
  const Setting london = london_clock("GB-ENG");
  const auto change = london.next_clock_change({1774700000, 0});
  REQUIRE(change);
  CHECK(write_time(*change) == "2026-03-29T02:00:00+01:00");
}

TEST_CASE("a zone the system hasn't got is told", "[hours]") {
  CHECK_THROWS_WITH(Setting("GB-ENG", "Europe/Quillham", {}),
                    "the system has no time zone 'Europe/Quillham'; install tzdata");
}

}  // namespace loopwright::hours
