#include <catch2/catch.hpp>

#include "loopwright/hours/hours.hpp"

namespace loopwright {
namespace {

using hours::read_hours;
using hours::Tri;

/// In the week of Monday 23 November 2026.
CivilTime at(int day, int hour, int minute) {
  return {{2026, 11, day}, hour, minute, 0};
}

TEST_CASE("an interval is one answer only when it holds from its first to its last minute",
          "[hours]") {
  const hours::Hours lane = read_hours("Mo-Sa 16:00-19:00");
  CHECK(lane.through(at(28, 15, 41), at(28, 15, 47)) == Tri::no);
  CHECK(lane.through(at(28, 15, 41), at(28, 15, 59)) == Tri::no);
  CHECK(lane.through(at(28, 15, 59), at(28, 16, 0)) == Tri::unknown);
  CHECK(lane.through(at(28, 16, 0), at(28, 18, 59)) == Tri::yes);
  CHECK(lane.through(at(28, 16, 0), at(28, 19, 0)) == Tri::unknown);
  CHECK(lane.through(at(28, 19, 0), at(28, 19, 5)) == Tri::no);
  CHECK(lane.through(at(28, 15, 0), at(28, 20, 0)) == Tri::unknown);  // all of it inside
}

TEST_CASE("an interval of hours that can't be read has no answer", "[hours]") {
  CHECK(read_hours("Mo-Fr 07:00+").through(at(28, 4, 0), at(28, 4, 5)) == Tri::unknown);
}

TEST_CASE("the next change is found on the same day, over the weekend and over midnight",
          "[hours]") {
  const hours::Hours lane = read_hours("Mo-Fr 07:00-10:00,16:00-19:00");
  CHECK(lane.next_change(at(27, 6, 59)) == at(27, 7, 0));
  CHECK(lane.next_change(at(27, 7, 0)) == at(27, 10, 0));
  CHECK(lane.next_change({{2026, 11, 27}, 9, 59, 59}) == at(27, 10, 0));
  CHECK(lane.next_change(at(27, 19, 0)) == at(30, 7, 0));
  CHECK(read_hours("Mo 22:00-06:00").next_change(at(24, 0, 30)) == at(24, 6, 0));
  CHECK(read_hours("Mo 07:00-08:00").next_change(at(23, 8, 0)) == at(30, 7, 0));
}

TEST_CASE("spans that meet at midnight are no change", "[hours]") {
  const hours::Hours lane = read_hours("Mo-Tu 20:00-24:00, Tu-We 00:00-06:00");
  CHECK(lane.next_change(at(23, 21, 0)) == at(24, 6, 0));
}

TEST_CASE("what is always or never in force never changes", "[hours]") {
  CHECK_FALSE(read_hours("24/7").next_change(at(28, 15, 0)));
  CHECK_FALSE(read_hours("Mo-Su 00:00-24:00").next_change(at(28, 15, 0)));
  CHECK_FALSE(read_hours("off").next_change(at(28, 15, 0)));
  CHECK_FALSE(read_hours("Mo-Fr 07:00+").next_change(at(28, 15, 0)));
}

TEST_CASE("the next change is the first minute with another answer, minute by minute", "[hours]") {
  constexpr int minutes = 16 * 24 * 60;
  const auto after = [](int minute) {
    return at(15 + minute / 1440, minute / 60 % 24, minute % 60);
  };
  for (const std::string_view text :
       {"Mo-Fr 07:00-10:00,16:00-19:00", "Fr-Mo 22:00-06:00", "24/7; We 23:00-25:30 off",
        "Su 23:59-24:00", "Mo-Su 12:00-36:00; Th off"}) {
    INFO(text);
    const hours::Hours hours = read_hours(text);
    REQUIRE(hours.readable());
    int wrong = 0;
    std::optional<CivilTime> next_change;  // known from the second week on
    for (int minute = minutes - 2; minute >= 0; --minute) {
      const CivilTime next = after(minute + 1);
      if (hours.in_force(after(minute)) != hours.in_force(next)) next_change = next;
      wrong += minute < minutes / 2 && hours.next_change(after(minute)) != next_change;
    }
    CHECK(next_change);
    CHECK(wrong == 0);
  }
}

TEST_CASE("hours are told in words", "[hours]") {
  CHECK(read_hours("Mo-Sa 07:00-10:00,16:00-19:00").words() ==
        "Monday to Saturday 07:00 to 10:00 and 16:00 to 19:00");
  CHECK(read_hours("24/7").words() == "at any time");
  CHECK(read_hours("off").words() == "never");
  CHECK(read_hours("07:00-19:00").words() == "every day 07:00 to 19:00");
  CHECK(read_hours("Sa,Su").words() == "Saturday and Sunday all day");
  CHECK(read_hours("Fr-Mo 22:00-06:00").words() == "Friday to Monday 22:00 to 06:00");
  CHECK(read_hours("Mo,We,Fr 07:00-24:00").words() ==
        "Monday, Wednesday and Friday 07:00 to 24:00");
  CHECK(read_hours("Mo-Fr 07:00-19:00; Sa 08:00-18:00").words() ==
        "Monday to Friday 07:00 to 19:00; Saturday 08:00 to 18:00");
  CHECK(read_hours("Mo 07:00-08:00,09:00-10:00,11:00-12:00").words() ==
        "Monday 07:00 to 08:00, 09:00 to 10:00 and 11:00 to 12:00");
}

}  // namespace
}  // namespace loopwright
