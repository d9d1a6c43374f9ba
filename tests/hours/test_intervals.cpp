// Intervals and changes: by going through minute by minute. Summer time: Directive 2000/84/EC (last
// Sundays of March and October, 01:00 UTC), trap 12 of MAP-TAGS.md.
#include <catch2/catch.hpp>

#include "loopwright/hours/hours.hpp"

namespace loopwright::hours {
namespace {

const Setting& london() {
  static const Setting setting("GB-ENG", "Europe/London", std::nullopt);
  return setting;
}

Instant utc(int month, int day, int hour, int minute, int second = 0) {
  return {civil_seconds({{2026, month, day}, hour, minute, second}), 0};
}

/// In the week of Monday 23 November 2026, when London's clock is UTC.
Instant at(int day, int hour, int minute, int second = 0) {
  return utc(11, day, hour, minute, second);
}

Tri through(std::string_view text, const Instant& from, const Instant& to) {
  return read_hours(text).through(from, to, london()).in_force;
}

/// "2026-11-27T07:00:00+00:00", or "none".
std::string change(std::string_view text, const Instant& from, int ahead_days = 400) {
  const auto next = read_hours(text).next_change(from, london(), ahead_days);
  return next ? write_time(*next) : "none";
}

std::string on(int day, std::string_view clock) {
  return "2026-11-" + std::to_string(day) + "T" + std::string(clock) + ":00+00:00";
}

/// Minutes from `first` on whose next change isn't the next minute with another answer.
int wrong_changes(const Hours& hours, const Instant& first, int minutes) {
  int wrong = 0;
  std::optional<Instant> expected;
  for (int k = minutes - 1; k >= 0; --k) {
    const Instant now = first.plus_seconds(60 * k), next = now.plus_seconds(60);
    const Tri answer = hours.at(next, london()).in_force;
    if (hours.at(now, london()).in_force != answer) expected = next;
    if (!expected) continue;  // its change lies behind the minutes looked at
    const auto change = hours.next_change(now, london());
    wrong += !change || change->unix_s != expected->unix_s;
  }
  return wrong;
}

}  // namespace

TEST_CASE("an interval is one answer only when it holds from its first to its last minute",
          "[hours]") {
  const std::string_view lane = "Mo-Sa 16:00-19:00";
  CHECK(through(lane, at(28, 15, 41), at(28, 15, 47)) == Tri::no);
  CHECK(through(lane, at(28, 15, 41), at(28, 15, 59, 59)) == Tri::no);
  CHECK(through(lane, at(28, 15, 59), at(28, 16, 0)) == Tri::unknown);
  CHECK(through(lane, at(28, 16, 0), at(28, 18, 59, 59)) == Tri::yes);
  CHECK(through(lane, at(28, 16, 0), at(28, 19, 0)) == Tri::unknown);
  CHECK(through(lane, at(28, 19, 0), at(28, 19, 5)) == Tri::no);
  CHECK(through(lane, at(28, 15, 0), at(28, 20, 0)) == Tri::unknown);  // all of it inside
  CHECK(through(lane, at(28, 17, 0), at(28, 17, 0)) == Tri::yes);
}

TEST_CASE("an interval that changes says so, one that can't be read says that", "[hours]") {
  const auto reason = [](std::string_view text) {
    return read_hours(text).through(at(28, 15, 0), at(28, 17, 0), london()).reason;
  };
  CHECK(reason("Mo-Sa 16:00-19:00") == Reason::changes);
  CHECK(reason("Mo-Sa 15:00-19:00") == Reason::stated);
  CHECK(reason("Mo-Sa 16 to seven") == Reason::unreadable);
}

TEST_CASE("the next change is found on the same day, over the weekend and over midnight",
          "[hours]") {
  const std::string_view lane = "Mo-Fr 07:00-10:00,16:00-19:00";
  CHECK(change(lane, at(27, 6, 59)) == on(27, "07:00"));
  CHECK(change(lane, at(27, 7, 0)) == on(27, "10:00"));
  CHECK(change(lane, at(27, 9, 59, 59)) == on(27, "10:00"));
  CHECK(change(lane, at(27, 19, 0)) == on(30, "07:00"));
  CHECK(change("Mo 22:00-06:00", at(24, 0, 30)) == on(24, "06:00"));
  CHECK(change("Mo 07:00-08:00", at(23, 8, 0)) == on(30, "07:00"));
}

TEST_CASE("the next change may be to unknown, and be that of a bank holiday", "[hours]") {
  CHECK(change("We 07:00-10:00, We 10:00-12:00 unknown", at(25, 8, 0)) == on(25, "10:00"));
  CHECK(change("24/7; PH off", at(25, 8, 0)) == "2026-12-25T00:00:00+00:00");
}

TEST_CASE("spans that meet are no change, at midnight neither", "[hours]") {
  CHECK(change("Mo-Tu 20:00-24:00, Tu-We 00:00-06:00", at(23, 21, 0)) == on(24, "06:00"));
  CHECK(change("07:00-10:00,10:00-12:00", at(23, 8, 0)) == on(23, "12:00"));
}

TEST_CASE("what is always or never in force, or can't be read, never changes", "[hours]") {
  for (const std::string_view text : {"24/7", "Mo-Su 00:00-24:00", "off", "2025", "Mo-Fr 07:00-"}) {
    INFO(text);
    CHECK(change(text, at(28, 15, 0)) == "none");
  }
}

TEST_CASE("a change is looked for so many days ahead as asked", "[hours]") {
  CHECK(change("Dec 1", at(28, 0, 0), 2) == "none");
  CHECK(change("Dec 1", at(28, 0, 0), 3) == "2026-12-01T00:00:00+00:00");
  CHECK(change("2028 Feb 29", at(28, 0, 0)) == "none");
  CHECK(change("2028 Feb 29", at(28, 0, 0), 500) == "2028-02-29T00:00:00+00:00");
}

TEST_CASE("the next change is the first minute with another answer, minute by minute", "[hours]") {
  for (const std::string_view text :
       {"Mo-Fr 07:00-10:00,16:00-19:00", "Fr-Mo 22:00-06:00", "24/7; We 23:00-25:30 off",
        "Su 23:59-24:00", "Mo-Su 12:00-36:00; Th off", "17:00+", "PH,We 07:00-07:02"}) {
    INFO(text);
    CHECK(wrong_changes(read_hours(text), at(23, 0, 0), 8 * 1440) == 0);
  }
}

TEST_CASE("of many spans the next change is found as of few", "[hours]") {
  std::string text = "Mo-Sa 00:10-00:20";
  for (int hour = 1; hour < 24; ++hour) {
    const std::string two = (hour < 10 ? "0" : "") + std::to_string(hour);
    text += "," + two + ":10-" + two + ":20";
  }
  text += "; We 22:00-26:30 off; PH 07:00-09:00 unknown";
  const Hours hours = read_hours(text);
  REQUIRE(hours.readable());
  CHECK(wrong_changes(hours, at(23, 0, 0), 3 * 1440) == 0);
  CHECK(wrong_changes(hours, utc(12, 24, 0, 0), 3 * 1440) == 0);
  CHECK(wrong_changes(hours, utc(10, 24, 12, 0), 1440) == 0);
}

TEST_CASE("hundreds of spans that change nothing take one look a day", "[hours]") {
  std::string text = "24/7";
  for (int minute = 0; minute < 1440; minute += 2) {
    const auto two = [](int number) { return (number < 10 ? "0" : "") + std::to_string(number); };
    const std::string hour = two(minute / 60) + ":";
    text += "," + hour + two(minute % 60) + "-" + hour + two(minute % 60 + 1);
  }
  const Hours hours = read_hours(text);
  REQUIRE(hours.readable());
  CHECK(hours.next_look({{2026, 11, 27}, 0, 0, 0}, london()) == CivilTime{{2026, 11, 28}, 0, 0, 0});
  CHECK(change(text, at(28, 0, 0)) == "none");
}

TEST_CASE("on 25 October 2026 the hour that comes twice is asked twice", "[hours]") {
  const std::string_view text = "01:30-02:00";  // 00:30 to 01:00 UTC, and 01:30 to 02:00 again
  CHECK(change(text, utc(10, 25, 0, 0)) == "2026-10-25T01:30:00+01:00");
  CHECK(change(text, utc(10, 25, 0, 30)) == "2026-10-25T01:00:00+00:00");
  CHECK(change(text, utc(10, 25, 1, 0)) == "2026-10-25T01:30:00+00:00");
  CHECK(change(text, utc(10, 25, 1, 30)) == "2026-10-25T02:00:00+00:00");
  CHECK(through(text, utc(10, 25, 0, 30), utc(10, 25, 0, 59)) == Tri::yes);
  CHECK(through(text, utc(10, 25, 0, 30), utc(10, 25, 1, 30)) == Tri::unknown);
  CHECK(through("01:00-02:00", utc(10, 25, 0, 0), utc(10, 25, 1, 59)) == Tri::yes);
  CHECK(wrong_changes(read_hours(text), utc(10, 24, 23, 0), 300) == 0);
}

TEST_CASE("on 29 March 2026 the hour that is jumped over is never asked", "[hours]") {
  CHECK(change("01:15-01:45", utc(3, 29, 0, 0)) == "2026-03-30T01:15:00+01:00");
  CHECK(change("01:30-03:00", utc(3, 29, 0, 0)) == "2026-03-29T02:00:00+01:00");
  CHECK(change("01:30-03:00", utc(3, 29, 1, 0)) == "2026-03-29T03:00:00+01:00");
  CHECK(change("00:30-01:30", utc(3, 29, 0, 45)) == "2026-03-29T02:00:00+01:00");
  CHECK(through("01:00-02:00", utc(3, 29, 0, 0), utc(3, 29, 4, 0)) == Tri::no);
  CHECK(through("00:00-01:00,02:00-04:00", utc(3, 29, 0, 0), utc(3, 29, 2, 59)) == Tri::yes);
  CHECK(wrong_changes(read_hours("01:30-03:00"), utc(3, 28, 23, 0), 300) == 0);
}

TEST_CASE("the next look is after the moment and not after the next change", "[hours]") {
  const Hours hours = read_hours("Mo-Fr 07:00-10:00");
  CHECK(hours.next_look({{2026, 11, 27}, 6, 0, 30}, london()) ==
        CivilTime{{2026, 11, 27}, 7, 0, 0});
  CHECK(hours.next_look({{2026, 11, 27}, 10, 0, 0}, london()) ==
        CivilTime{{2026, 11, 28}, 0, 0, 0});
  CHECK(read_hours("?").next_look({{2026, 12, 31}, 9, 0, 0}, london()) ==
        CivilTime{{2027, 1, 1}, 0, 0, 0});
}

}  // namespace loopwright::hours
