// Against the reference implementation of the grammar: npm opening_hours 3.15.0, asked for 29
// expressions at 15 instants in Europe/London (O in force, C not, U unknown). Expressions beyond
// the plain grammar must not be read at all.
#include <catch2/catch.hpp>

#include "loopwright/hours/hours.hpp"

namespace loopwright {
namespace {

using hours::read_hours;
using hours::Tri;

CivilTime on(int month, int day, int hour, int minute) {
  return {{2026, month, day}, hour, minute, 0};
}

/// The answers of 15 instants in a row, as letters.
std::string row(std::string_view text) {
  const hours::Hours hours = read_hours(text);
  std::string letters;
  for (const CivilTime& at :
       {on(11, 25, 6, 59), on(11, 25, 7, 0), on(11, 25, 9, 59), on(11, 25, 10, 0),
        on(11, 25, 17, 30), on(11, 25, 19, 0), on(11, 25, 23, 0), on(11, 28, 5, 30),
        on(11, 28, 8, 30), on(11, 29, 8, 30), on(11, 30, 8, 30), on(12, 25, 8, 30),
        on(12, 28, 8, 30), on(6, 1, 8, 30), on(8, 31, 8, 30)}) {
    const Tri answer = hours.in_force(at);
    letters += answer == Tri::yes ? 'O' : answer == Tri::no ? 'C' : 'U';
  }
  return letters;
}

const std::string unreadable(15, 'U');

TEST_CASE("no text is not readable", "[hours]") {
  CHECK_FALSE(read_hours("").readable());
  CHECK_FALSE(read_hours("  ").readable());
  CHECK(read_hours("").in_force(on(11, 25, 8, 0)) == Tri::unknown);
}

TEST_CASE("plain hours are read as the reference reads them", "[hours]") {
  CHECK(row("24/7") == "OOOOOOOOOOOOOOO");
  CHECK(row("Mo-Fr 07:00-10:00,16:00-19:00") == "COOCOCCCCCOOOOO");
  CHECK(row("Mo-Fr 07:00-10:00, 16:00-19:00") == "COOCOCCCCCOOOOO");
  CHECK(row("Mo-Sa 07:00-19:00") == "COOOOCCCOCOOOOO");
  CHECK(row("Mo-Su 07:00-19:00") == "COOOOCCCOOOOOOO");
  CHECK(row("07:00-19:00") == "COOOOCCCOOOOOOO");
  CHECK(row("Mo,We,Fr 07:00-19:00") == "COOOOCCCCCOOOOO");
  CHECK(row("Fr-Mo 07:00-19:00") == "CCCCCCCCOOOOOOO");
  CHECK(row("22:00-06:00") == "CCCCCCOOCCCCCCC");
  CHECK(row("Mo-Fr") == "OOOOOOOCCCOOOOO");
  CHECK(row("Sa,Su") == "CCCCCCCOOOCCCCC");
  CHECK(row("Mo-Fr 7:00-10:00") == "COOCCCCCCCOOOOO");
  CHECK(row("Mo-Fr 07:00-24:00") == "COOOOOOCCCOOOOO");
}

// Trap 8: mappers lose the morning by writing ';' for ','.
TEST_CASE("after a semicolon a rule replaces the days it names, after a comma it adds", "[hours]") {
  CHECK(row("Mo-Fr 07:00-10:00; Mo-Fr 16:00-19:00") == "CCCCOCCCCCCCCCC");
  CHECK(row("Mo-Fr 07:00-10:00, Mo-Fr 16:00-19:00") == "COOCOCCCCCOOOOO");
}

// Trap 10.
TEST_CASE("the end minute of hours is out", "[hours]") {
  const hours::Hours lane = read_hours("Mo-Fr 07:00-10:00");
  CHECK(lane.in_force({{2026, 11, 25}, 9, 59, 59}) == Tri::yes);
  CHECK(lane.in_force({{2026, 11, 25}, 10, 0, 0}) == Tri::no);
  CHECK(lane.in_force({{2026, 11, 25}, 7, 0, 0}) == Tri::yes);
  CHECK(lane.in_force({{2026, 11, 25}, 6, 59, 59}) == Tri::no);
}

// Trap 11.
TEST_CASE("Friday's hours past midnight reach into Saturday, Saturday's own don't begin",
          "[hours]") {
  CHECK(row("Mo-Fr 22:00-06:00") == "CCCCCCOOCCCCCCC");
  const hours::Hours nights = read_hours("Mo-Fr 22:00-06:00");
  CHECK(nights.in_force(on(11, 28, 5, 59)) == Tri::yes);
  CHECK(nights.in_force(on(11, 28, 6, 0)) == Tri::no);
  CHECK(nights.in_force(on(11, 28, 22, 0)) == Tri::no);
  CHECK(nights.in_force(on(11, 30, 5, 30)) == Tri::no);  // Monday: Sunday night is free
  CHECK(read_hours("Su 22:00-26:00").in_force(on(11, 30, 1, 59)) == Tri::yes);
}

TEST_CASE("a rule for the next day takes the small hours with it", "[hours]") {
  CHECK(read_hours("Fr 22:00-06:00; Sa 08:00-10:00").in_force(on(11, 28, 5, 30)) == Tri::no);
  CHECK(read_hours("Fr 22:00-06:00, Sa 08:00-10:00").in_force(on(11, 28, 5, 30)) == Tri::yes);
  CHECK(read_hours("Fr 22:00-06:00; Sa off").in_force(on(11, 28, 5, 30)) == Tri::no);
  CHECK(read_hours("Fr 22:00-06:00; Fr 08:00-10:00").in_force(on(11, 28, 5, 30)) == Tri::yes);
}

TEST_CASE("off takes out its days, with a time just that time", "[hours]") {
  CHECK(row("off") == "CCCCCCCCCCCCCCC");
  CHECK(row("24/7; We closed") == "CCCCCCCOOOOOOOO");
  CHECK(row("24/7; Su off") == "OOOOOOOOOCOOOOO");
  CHECK(row("Mo-Fr 07:00-19:00; We 09:00-18:00 off") == "COCCCCCCCCOOOOO");
  CHECK(read_hours("Mo-Fr 22:00-06:00; 05:00-05:30 off").in_force(on(11, 28, 5, 0)) == Tri::no);
  CHECK(read_hours("Mo-Fr 22:00-06:00; 05:00-05:30 off").in_force(on(11, 28, 5, 30)) == Tri::yes);
  CHECK(read_hours("24/7; Mo 23:00-02:00 off").in_force(on(12, 1, 1, 59)) == Tri::no);
  CHECK(read_hours("24/7; Mo 23:00-02:00 off").in_force(on(12, 1, 2, 0)) == Tri::yes);
}

// Traps 9 and 14, and what else the whole grammar has.
TEST_CASE("hours that name holidays, terms, dates or the sun are not guessed at", "[hours]") {
  for (const std::string_view text :
       {"Mo-Fr 07:00-19:00; PH off", "PH off; Mo-Fr 07:00-19:00",
        "Mo-Fr 07:00-19:00; Sa 08:00-18:00; PH off", "Mo-Fr 08:00-09:00; SH off",
        "Mar-Oct Mo-Fr 07:00-19:00", "Nov 25-Dec 31 Mo-Fr 07:00-19:00", "Mo[1] 07:00-19:00",
        "week 48 Mo-Fr 07:00-19:00", "2026 Nov 25 07:00-19:00", "Mo-Fr 07:00+",
        "Mo-Fr 07:00-10:00 \"term time\"", "Mo-Fr 07:00-10:00 unknown", "Mo-Fr sunrise-sunset",
        "Mo-Fr 07:00-10:00 || \"by signal\""}) {
    INFO(text);
    CHECK(row(text) == unreadable);
    CHECK(read_hours(text).words() == text);
  }
}

// Trap 15: lights that flash are no matter of the clock.
TEST_CASE("flashing lights, wet roads and heavy lorries are no hours", "[hours]") {
  CHECK(row("flashing") == unreadable);
  CHECK(row("wet") == unreadable);
  CHECK(row("Mo-Sa 07:00-19:00 AND weight>7.5") == unreadable);
}

TEST_CASE("sloppy hours are not guessed at", "[hours]") {
  for (const std::string_view text : {"Mo-Fr 0700-1000",
                                      "Mon-Fri 7am-10am",
                                      "07:00-10:00 Mo-Fr",
                                      "mo-fr 07:00-10:00",
                                      "Mo-Fr: 07:00-10:00",
                                      "Mo-Fr 07.00-10.00",
                                      "Mo-Fr 07:60-10:00",
                                      "Mo-Fr 24:00-26:00",
                                      "Mo-Fr 07:00-49:00",
                                      "Mo-Fr 07:00-07:00",
                                      "Mo-Fr 07:00",
                                      "Mo-Fr 07:00-",
                                      "Mo-",
                                      "Mo-Fr, 07:00-10:00",
                                      "Mo-Fr 07:00-10:00,",
                                      "Mo-Fr 07:00-10:00;",
                                      "; Mo-Fr",
                                      "07:00-10:00 "
                                      "16:00-19:00",
                                      "24/7 Mo",
                                      "Mo-Fr 07:00-10:00 offside"}) {
    INFO(text);
    CHECK(row(text) == unreadable);
  }
}

TEST_CASE("where reading stopped is told", "[hours]") {
  CHECK(read_hours("Mo-Fr 07:00-19:00; PH off").stopped_at() == 19);
  CHECK(read_hours("Mo-Fr 07:00+").stopped_at() == 11);
  CHECK(read_hours("flashing").stopped_at() == 0);
}

}  // namespace
}  // namespace loopwright
