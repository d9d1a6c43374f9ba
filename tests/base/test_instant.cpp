#include <catch2/catch.hpp>

#include "loopwright/base/instant.hpp"

namespace loopwright {
namespace {

TEST_CASE("the days of the calendar count from 1970", "[base]") {
  // GNU date: date -u -d 2000-03-01 +%s is 951868800, and so on; divided by 86400.
  CHECK(days_since_epoch({1970, 1, 1}) == 0);
  CHECK(days_since_epoch({2000, 3, 1}) == 951868800 / 86400);
  CHECK(days_since_epoch({1900, 3, 1}) == -2203891200 / 86400);
  CHECK(days_since_epoch({2026, 11, 28}) == 1795824000 / 86400);
}

TEST_CASE("every day of four centuries comes back as itself", "[base]") {
  // The Gregorian calendar repeats after 146,097 days; 28 to 29 February included.
  Date before = date_from_days(-1);
  for (std::int64_t day = 0; day < 146097; ++day) {
    const Date date = date_from_days(day);
    if (days_since_epoch(date) != day || !(before < date)) FAIL("day " << day);
    before = date;
  }
  CHECK(before == Date{2369, 12, 31});
}

TEST_CASE("28 November 2026 is a Saturday", "[base]") {
  CHECK(weekday_of({2026, 11, 28}) == Weekday::saturday);
  CHECK(weekday_of({1970, 1, 1}) == Weekday::thursday);
  CHECK(weekday_of({2026, 11, 29}) == Weekday::sunday);
}

TEST_CASE("a lesson's start reads the same with and without seconds and offset", "[base]") {
  const CivilTime three{{2026, 11, 28}, 15, 0, 0};
  REQUIRE(read_time("2026-11-28T15:00"));
  CHECK(read_time("2026-11-28T15:00")->civil == three);
  CHECK_FALSE(read_time("2026-11-28T15:00")->offset_s);
  CHECK(read_time("2026-11-28T15:00:00Z")->offset_s == 0);
  CHECK(read_time("2026-11-28T15:00+01:00")->offset_s == 3600);
  CHECK(read_time("2026-11-28T15:00:30-05:30")->offset_s == -19800);
  CHECK(read_time("2026-11-28T15:00:30-05:30")->civil.second == 30);
}

TEST_CASE("a start that doesn't exist or isn't written so is not read", "[base]") {
  for (const char* text : {"",
                           "tomorrow",
                           "2026-11-28",
                           "2026-11-28 15:00",
                           "2026-11-31T15:00",
                           "2026-02-29T15:00",
                           "2026-13-01T15:00",
                           "2026-00-01T15:00",
                           "2026-11-00T15:00",
                           "2026-11-28T24:00",
                           "2026-11-28T15:60",
                           "2026-11-28T15:00:60",
                           "2026-11-28T15",
                           "2026-11-28T15:0",
                           "2026-11-28T15:00+1:00",
                           "2026-11-28T15:00+0100",
                           "2026-11-28T15:00+24:00",
                           "2026-11-28T15:00Zx",
                           "2026-11-28T15:00:00.5Z",
                           "+026-11-28T15:00",
                           " 2026-11-28T15:00"}) {
    INFO(text);
    CHECK_FALSE(read_time(text));
  }
  CHECK(read_time("2024-02-29T00:00"));
}

TEST_CASE("a date alone is read as a date", "[base]") {
  CHECK(read_date("2023-09-17") == Date{2023, 9, 17});
  CHECK_FALSE(read_date("2023-09-17T00:00"));
  CHECK_FALSE(read_date("2023-9-17"));
}

TEST_CASE("a moment is written with its offset, and reads as it was on the wall", "[base]") {
  const Instant winter{1795878000, 0};  // date -u -d 2026-11-28T15:00 +%s
  CHECK(write_time(winter) == "2026-11-28T15:00:00+00:00");
  CHECK(write_clock(winter) == "15:00");
  const Instant summer{1783000800, 3600};
  CHECK(write_time(summer) == "2026-07-02T15:00:00+01:00");
  const Instant west{1795878000, -12600};
  CHECK(write_time(west) == "2026-11-28T11:30:00-03:30");
}

TEST_CASE("forty-one minutes later the clock on the wall says so", "[base]") {
  const Instant start{1795878000, 0};
  CHECK(write_clock(start.plus_seconds(41 * 60)) == "15:41");
  CHECK(write_time(start.plus_seconds(9 * 3600)) == "2026-11-29T00:00:00+00:00");
}

TEST_CASE("moments before 1970 have their own day", "[base]") {
  const Instant eve{-1, 0};
  CHECK(write_time(eve) == "1969-12-31T23:59:59+00:00");
  CHECK(civil_seconds({{1969, 12, 31}, 23, 59, 59}) == -1);
}

}  // namespace
}  // namespace loopwright
