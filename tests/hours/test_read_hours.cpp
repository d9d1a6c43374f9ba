// Against the reference implementation of the grammar: npm opening_hours 3.15.0, asked for England
// at 15 instants (O in force, C not, U unknown; the rows of MAP-TAGS.md 2.2 are among them). What
// can't be read, and where reading stops: OSM wiki Key:opening_hours/specification for what is no
// text of the grammar, our own judgement for where.
#include <catch2/catch.hpp>

#include "loopwright/hours/hours.hpp"

namespace loopwright::hours {
namespace {

CivilTime on(int month, int day, int hour, int minute) {
  return {{2026, month, day}, hour, minute, 0};
}

Tri asked(std::string_view text, const CivilTime& at) {
  static const Setting england("GB-ENG", "Europe/London", std::nullopt);
  return read_hours(text).at(at, england).in_force;
}

/// The answers of 15 instants in a row, as letters.
std::string row(std::string_view text) {
  std::string letters;
  for (const CivilTime& at :
       {on(11, 25, 6, 59), on(11, 25, 7, 0), on(11, 25, 9, 59), on(11, 25, 10, 0),
        on(11, 25, 17, 30), on(11, 25, 19, 0), on(11, 25, 23, 0), on(11, 28, 5, 30),
        on(11, 28, 8, 30), on(11, 29, 8, 30), on(11, 30, 8, 30), on(12, 25, 8, 30),
        on(12, 28, 8, 30), on(6, 1, 8, 30), on(8, 31, 8, 30)}) {
    const Tri answer = asked(text, at);
    letters += answer == Tri::yes ? 'O' : answer == Tri::no ? 'C' : 'U';
  }
  return letters;
}

/// "4: a time" where reading stops, and what was looked for there.
std::string trouble(std::string_view text) {
  const Hours hours = read_hours(text);
  if (hours.readable()) return "none";
  return std::to_string(hours.stopped_at()) + ": " + std::string(hours.problem());
}

const std::string wanted_rule = "days, times, 24/7, open, off or unknown";

}  // namespace

TEST_CASE("no text is not readable, and nobody knows when it holds", "[hours]") {
  CHECK_FALSE(Hours().readable());
  CHECK(trouble("") == "0: " + wanted_rule);
  CHECK(trouble("  ") == "2: " + wanted_rule);
  const Answer answer = read_hours("").at(on(11, 25, 8, 0), Setting());
  CHECK(answer == Answer{Tri::unknown, Reason::unreadable, {}});
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

TEST_CASE("after a semicolon a rule replaces the days it names, after a comma it adds", "[hours]") {
  CHECK(row("Mo-Fr 07:00-10:00; Mo-Fr 16:00-19:00") == "CCCCOCCCCCCCCCC");
  CHECK(row("Mo-Fr 07:00-10:00, Mo-Fr 16:00-19:00") == "COOCOCCCCCOOOOO");
}

// Trap 9 of MAP-TAGS.md; that the order matters is in its section 2.2.
TEST_CASE("bank holidays are off only when the text says so last", "[hours]") {
  CHECK(row("Mo-Fr 07:00-19:00; PH off") == "COOOOCCCCCOCCOC");
  CHECK(row("PH off; Mo-Fr 07:00-19:00") == "COOOOCCCCCOOOOO");
  CHECK(row("Mo-Fr 07:00-19:00") == "COOOOCCCCCOOOOO");
}

TEST_CASE("hours without an end are unknown from their beginning on", "[hours]") {
  CHECK(row("Mo-Fr 07:00+") == "CUUUUUUCCCUUUUU");
}

// Trap 10.
TEST_CASE("the end minute of hours is out", "[hours]") {
  CHECK(asked("Mo-Fr 07:00-10:00", {{2026, 11, 25}, 9, 59, 59}) == Tri::yes);
  CHECK(asked("Mo-Fr 07:00-10:00", {{2026, 11, 25}, 10, 0, 0}) == Tri::no);
  CHECK(asked("Mo-Fr 07:00-10:00", {{2026, 11, 25}, 7, 0, 0}) == Tri::yes);
  CHECK(asked("Mo-Fr 07:00-10:00", {{2026, 11, 25}, 6, 59, 59}) == Tri::no);
}

// Trap 11.
TEST_CASE("Friday's hours past midnight reach into Saturday, Saturday's own don't begin",
          "[hours]") {
  const std::string_view nights = "Mo-Fr 22:00-06:00";
  CHECK(row(nights) == "CCCCCCOOCCCCCCC");
  CHECK(asked(nights, on(11, 28, 5, 59)) == Tri::yes);
  CHECK(asked(nights, on(11, 28, 6, 0)) == Tri::no);
  CHECK(asked(nights, on(11, 28, 22, 0)) == Tri::no);
  CHECK(asked(nights, on(11, 30, 5, 30)) == Tri::no);  // Monday: Sunday night is free
  CHECK(asked("Su 22:00-26:00", on(11, 30, 1, 59)) == Tri::yes);
}

// Trap 15: lights that flash are no matter of the clock.
TEST_CASE("flashing lights, wet roads and heavy lorries are no hours", "[hours]") {
  CHECK(trouble("flashing") == "0: " + wanted_rule);
  CHECK(trouble("wet") == "0: " + wanted_rule);
  CHECK(trouble("Mo-Sa 07:00-19:00 AND weight>7.5") == "18: a time, ; or ,");
}

TEST_CASE("where reading stops is told, and what was looked for there", "[hours]") {
  CHECK(trouble("Mo-Fr 07:60-10:00") == "9: minutes up to 59");
  CHECK(trouble("Mo-Fr 24:00-26:00") == "11: a beginning before 24:00");
  CHECK(trouble("Mo-Fr 07:00-49:00") == "17: an end within the next day");
  CHECK(trouble("Mo-Fr 07:00") == "11: - and the time it ends");
  CHECK(trouble("Mo-Fr 07:00-") == "12: a time");
  CHECK(trouble("08:00-18:00/01:30") == "11: a span of time, not moments in it");
  CHECK(trouble("13pm-14:00") == "2: an hour from 1 to 12");
  CHECK(trouble("Mo-") == "2: a time, ; or ,");
  CHECK(trouble("Mo-Fr 07:00-10:00,") == "18: " + wanted_rule);
  CHECK(trouble("; Mo-Fr") == "0: " + wanted_rule);
  CHECK(trouble("07:00-10:00 16:00-19:00") ==
        "12: a comma between two times, as in 07:00-10:00,16:00-19:00");
  CHECK(trouble("Mo-Fr off 07:00-10:00") == "10: ; or , before a further rule");
  CHECK(trouble("Mo-Fr 07:00-10:00 offside") == "18: a time, ; or ,");
  CHECK(trouble("Mo-Fr \"never closed") == "6: a time, ; or ,");
  CHECK(trouble("Mo[6]") == "3: a number from 1 to 5");
  CHECK(trouble("Dec Su[6]") == "7: a number from 1 to 5");
  CHECK(trouble("Dec Su[0]") == "7: a number from 1 to 5");
  CHECK(trouble("Dec Su[-6]") == "8: a number from 1 to 5");
  CHECK(trouble("Mo[1") == "4: ]");
  CHECK(trouble("Mo[3-1]") == "6: a number not below the first");
  CHECK(trouble("Feb 30") == "4: a day of that month");
  CHECK(trouble("week 54") == "5: a week from 1 to 53");
  CHECK(trouble("2026-2030/0") == "10: a number above 0");
  CHECK(trouble("2030-2026") == "5: a year not before the first");
  CHECK(trouble("(noon-01:00)-18:00") == "0: " + wanted_rule);
  CHECK(trouble("(sunset*01:00)-18:00") == "7: + or -");
  CHECK(trouble("(sunset-soon)-18:00") == "8: hours and minutes");
  CHECK(trouble("(sunset-01:00-18:00") == "13: )");
}

TEST_CASE("a semicolon at the end, or two together, part nothing", "[hours]") {
  CHECK(row("Mo-Fr 07:00-10:00;") == row("Mo-Fr 07:00-10:00"));
  CHECK(row("Mo-Fr 07:00-10:00;; PH off; ") == row("Mo-Fr 07:00-10:00; PH off"));
}

TEST_CASE("the name in front of a rule leaves its days unknown", "[hours]") {
  // A name in front: which days have it nobody can tell (npm opening_hours: unknown).
  CHECK(row("\"lane\": Mo-Fr 07:00-10:00") == "CUUCCCCCCCUUUUU");
}

TEST_CASE("the rule that decides is told", "[hours]") {
  static const Setting scotland("GB-SCT", "Europe/London", std::nullopt);
  const std::string_view text = "Mo-Fr 07:00-10:00; PH off";
  const Hours hours = read_hours(text);
  CHECK(hours.at(on(11, 25, 8, 0), scotland).rule.of(text) == "Mo-Fr 07:00-10:00");
  const Answer holiday = hours.at(on(11, 30, 8, 0), scotland);  // trap 13: St Andrew's Day
  CHECK(holiday.in_force == Tri::no);
  CHECK(holiday.reason == Reason::holiday);
  CHECK(holiday.rule.of(text) == "PH off");
  CHECK(hours.at(on(11, 28, 8, 0), scotland) == Answer{Tri::no, Reason::stated, {}});
}

TEST_CASE("a text of ten thousand characters is read like a short one", "[hours]") {
  std::string days = "Mo";
  while (days.size() < 10'000) days += ",Mo";
  CHECK(row(days) == row("Mo"));
  CHECK(trouble(std::string(10'000, '(')) == "0: " + wanted_rule);
  CHECK(trouble("Mo" + std::string(10'000, ';')) == "none");
}

TEST_CASE("a text longer than any tag is refused", "[hours]") {
  CHECK(trouble("Mo" + std::string(longest_text, ';')) ==
        "16384: the end of a text of at most 16384 bytes");
  CHECK(trouble("Mo" + std::string(longest_text - 2, ';')) == "none");
}

// As mappers write it, and both outside readers read it.
TEST_CASE("a colon behind dates, years and weeks is for the eye", "[hours]") {
  const auto same = [](std::string_view with, std::string_view without) {
    INFO(with);
    const Setting england("GB-ENG", "Europe/London", std::nullopt);
    const Hours a = read_hours(with), b = read_hours(without);
    REQUIRE(a.readable());
    int differ = 0;
    for (int day = 0; day < 730; ++day) {
      const Date date = date_from_days(days_since_epoch({2026, 1, 1}) + day);
      for (const int hour : {1, 8, 12, 23}) {
        const CivilTime at{date, hour, 30, 0};
        if (a.at(at, england).in_force != b.at(at, england).in_force) ++differ;
      }
    }
    CHECK(differ == 0);
  };
  same("Nov 15-Feb 15: Mo-Fr 08:00-10:00", "Nov 15-Feb 15 Mo-Fr 08:00-10:00");
  same("Mo 08:00-09:00; Dec 25: off", "Mo 08:00-09:00; Dec 25 off");
  same("Dec 25: 08:00-10:00", "Dec 25 08:00-10:00");
  same("Dec 24,26: 08:00-10:00", "Dec 24,26 08:00-10:00");
  same("2026: Mo 08:00-09:00", "2026 Mo 08:00-09:00");
  same("2026-2027: 08:00-09:00", "2026-2027 08:00-09:00");
  same("2026: Dec 25: off; Mo-Fr 08:00-09:00", "2026 Dec 25 off; Mo-Fr 08:00-09:00");
  same("week 10-20,30: Mo 08:00-09:00", "week 10-20,30 Mo 08:00-09:00");
  same("Mo-Fr Aug: 08:00-09:00", "Mo-Fr Aug 08:00-09:00");
  same("Dec 08:00-10:00", "Dec 01-31 08:00-10:00");  // of a month alone it is a time
}

TEST_CASE("the bank holiday that decides is told, also when it is tomorrow's", "[hours]") {
  static const Setting england("GB-ENG", "Europe/London", std::nullopt);
  const auto days = [](std::string_view text, const CivilTime& at) {
    const Answer answer = read_hours(text).at(at, england);
    return answer.reason == Reason::holiday ? std::to_string(answer.holiday_days) : "stated";
  };
  CHECK(days("Mo-Fr 07:00-10:00; PH off", on(12, 25, 8, 0)) == "0");
  CHECK(days("PH -1 day 08:00-12:00", on(12, 24, 8, 0)) == "1");
  CHECK(days("PH -1 day 08:00-12:00", on(12, 23, 8, 0)) == "stated");
  CHECK(days("PH -2 days off; Mo-Su 07:00-10:00; PH -2 days off", on(12, 23, 8, 0)) == "2");
  CHECK(days("PH +1 day 08:00-12:00", on(12, 29, 8, 0)) == "-1");
  CHECK(days("PH 22:00-02:00", on(12, 26, 1, 0)) == "-1");
  CHECK(days("Mo-Fr 07:00-10:00; PH off", on(11, 25, 8, 0)) == "stated");
}

TEST_CASE("what never changes says so, what only takes long doesn't", "[hours]") {
  for (const char* text : {"24/7", "off", "unknown", "\"by arrangement\"", "Mo-Su 00:00-24:00",
                           "00:00-12:00,12:00-24:00", "08:00-08:00", "Mo 08:00-", "24/7; off"}) {
    INFO(text);
    CHECK(read_hours(text).never_changes());
  }
  for (const char* text :
       {"Mo", "PH off", "08:00-10:00", "2020 Jan 01", "sunrise-sunset", "Mo-Su 00:00-23:59"}) {
    INFO(text);
    CHECK_FALSE(read_hours(text).never_changes());
  }
}

}  // namespace loopwright::hours
