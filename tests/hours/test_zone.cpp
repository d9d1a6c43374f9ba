// Against the law on summer time (Directive 2000/84/EC: last Sundays of March and October, 01:00
// UTC) as tzdata has it for the United Kingdom; other zones against tzdata's zone.tab.
#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/hours/zone.hpp"

namespace loopwright {
namespace {

using hours::instant_in;
using hours::with_offset_of;
using hours::zone_of;

const std::string london = "Europe/London";

std::string in_london(const CivilTime& civil) {
  return write_time(instant_in(london, civil));
}

TEST_CASE("a lesson's time in winter and in summer carries the clock's offset", "[hours]") {
  CHECK(in_london({{2026, 11, 28}, 15, 0, 0}) == "2026-11-28T15:00:00+00:00");
  CHECK(in_london({{2026, 7, 1}, 7, 30, 0}) == "2026-07-01T07:30:00+01:00");
  CHECK(write_time(instant_in("Europe/Vaduz", {{2013, 7, 1}, 9, 0, 0})) ==
        "2013-07-01T09:00:00+02:00");
}

// Trap 12.
TEST_CASE("on 25 October 2026 half past one comes twice, and the first is meant", "[hours]") {
  CHECK(in_london({{2026, 10, 25}, 0, 59, 59}) == "2026-10-25T00:59:59+01:00");
  const Instant first = instant_in(london, {{2026, 10, 25}, 1, 30, 0});
  CHECK(write_time(first) == "2026-10-25T01:30:00+01:00");
  const Instant second = with_offset_of(london, first.unix_s + 3600);
  CHECK(write_time(second) == "2026-10-25T01:30:00+00:00");
  CHECK(in_london({{2026, 10, 25}, 2, 0, 0}) == "2026-10-25T02:00:00+00:00");
}

TEST_CASE("on 29 March 2026 half past one doesn't come, and half past two is meant", "[hours]") {
  CHECK(in_london({{2026, 3, 29}, 0, 59, 59}) == "2026-03-29T00:59:59+00:00");
  CHECK(in_london({{2026, 3, 29}, 1, 30, 0}) == "2026-03-29T02:30:00+01:00");
  CHECK(in_london({{2026, 3, 29}, 2, 0, 0}) == "2026-03-29T02:00:00+01:00");
}

TEST_CASE("the offset of a moment is that of the zone's clock then", "[hours]") {
  constexpr std::int64_t change = 1792890000;  // 2026-10-25T01:00:00Z
  CHECK(with_offset_of(london, change - 1).offset_s == 3600);
  CHECK(with_offset_of(london, change).offset_s == 0);
}

TEST_CASE("a country's zone is the one nearest to the place", "[hours]") {
  const Point cardiff = point_from_degrees(51.48, -3.18);
  CHECK(zone_of("GB-WLS", cardiff) == "Europe/London");
  CHECK(zone_of("GB-NIR", cardiff) == "Europe/London");
  CHECK(zone_of("IE", point_from_degrees(53.3, -6.3)) == "Europe/Dublin");
  CHECK(zone_of("LI", point_from_degrees(47.1, 9.5)) == "Europe/Vaduz");
  CHECK(zone_of("ES", point_from_degrees(28.1, -15.4)) == "Atlantic/Canary");
  CHECK(zone_of("ES", point_from_degrees(40.4, -3.7)) == "Europe/Madrid");
  CHECK(zone_of("AU", point_from_degrees(-31.9, 115.9)) == "Australia/Perth");
}

TEST_CASE("a country the zone table doesn't have keeps universal time", "[hours]") {
  CHECK(zone_of("ZZ", {}) == "UTC");
  CHECK(write_time(instant_in("UTC", {{2026, 7, 1}, 9, 0, 0})) == "2026-07-01T09:00:00+00:00");
}

TEST_CASE("a zone that the system doesn't know is told, with the package to install", "[hours]") {
  CHECK_THROWS_WITH(instant_in("Europe/Quillham", {}),
                    "the system has no time zone 'Europe/Quillham'; install tzdata");
  CHECK_THROWS_WITH(with_offset_of("", 0), "the system has no time zone ''; install tzdata");
}

Point degrees_minutes_seconds(double lat_d, double lat_m, double lat_s, double lon_d, double lon_m,
                              double lon_s) {
  return point_from_degrees(lat_d + lat_m / 60 + lat_s / 3600,
                            -(lon_d + lon_m / 60 + lon_s / 3600));
}

Point part_way(Point from, Point to, double share) {
  const auto between = [share](std::int32_t a, std::int32_t b) {
    return a + static_cast<std::int32_t>(share * (b - a));
  };
  return {between(from.lat_e7, to.lat_e7), between(from.lon_e7, to.lon_e7)};
}

// Places: zone.tab of tzdata. Read without their seconds the middle would lie a kilometre away.
TEST_CASE("between two cities of the zone table the nearer one decides", "[hours]") {
  const Point petersburg = degrees_minutes_seconds(38, 29, 31, 87, 16, 43);
  const Point vincennes = degrees_minutes_seconds(38, 40, 38, 87, 31, 43);
  CHECK(zone_of("US", part_way(petersburg, vincennes, 0.49)) == "America/Indiana/Petersburg");
  CHECK(zone_of("US", part_way(petersburg, vincennes, 0.51)) == "America/Indiana/Vincennes");
  // South and west of the lines that degrees are counted from, without seconds.
  const Point jujuy = degrees_minutes_seconds(-24, -11, 0, 65, 18, 0);
  const Point salta = degrees_minutes_seconds(-24, -47, 0, 65, 25, 0);
  CHECK(zone_of("AR", part_way(jujuy, salta, 0.49)) == "America/Argentina/Jujuy");
  CHECK(zone_of("AR", part_way(jujuy, salta, 0.51)) == "America/Argentina/Salta");
}

}  // namespace
}  // namespace loopwright
