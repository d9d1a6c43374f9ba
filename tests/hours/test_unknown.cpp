// Three-valued answers: what nobody can know is unknown, and only where it matters. Bank holidays
// by src/rules/bank_holidays.txt; the logic of AND and of later clauses: MAP-TAGS.md 2.1 (OSM wiki
// Conditional restrictions), traps 13 and 14.
#include <catch2/catch.hpp>

#include <string>

#include "loopwright/hours/condition.hpp"

namespace loopwright::hours {
namespace {

/// On Monday 30 November 2026, St Andrew's Day.
CivilTime monday(int hour, int minute = 0) {
  return {{2026, 11, 30}, hour, minute, 0};
}

const Setting& nothing_known() {
  static const Setting setting;
  return setting;
}

Answer asked(std::string_view text, const CivilTime& at, const Setting& setting) {
  Answer answer = read_hours(text).at(at, setting);
  answer.rule = {};
  return answer;
}

const Answer yes{Tri::yes, Reason::stated, {}};
const Answer no{Tri::no, Reason::stated, {}};

Answer unknown_for(Reason reason) {
  return {Tri::unknown, reason, {}};
}

/// Knows of one word that it holds, of another that it doesn't.
class TwoWords : public Circumstances {
 public:
  [[nodiscard]] Tri holds(const ConditionPart& part) const override {
    if (part.text == "wet") return Tri::yes;
    return part.text == "delivery" ? Tri::no : Tri::unknown;
  }
};

Answer condition(std::string_view text) {
  Answer answer = Condition(text).at(monday(8), nothing_known(), TwoWords());
  answer.rule = {};
  return answer;
}

}  // namespace

TEST_CASE("on St Andrew's Day a lane that is off on bank holidays is off in Scotland alone",
          "[hours]") {
  const std::string_view text = "Mo-Fr 07:00-10:00; PH off";
  const Setting scotland("GB-SCT", "Europe/London", std::nullopt);
  const Setting england("GB-ENG", "Europe/London", std::nullopt);
  CHECK(asked(text, monday(8), scotland) == Answer{Tri::no, Reason::holiday, {}});
  CHECK(asked(text, monday(8), england) == yes);
  CHECK(asked(text, monday(12), scotland) == no);
}

TEST_CASE("without a table of bank holidays an answer is unknown only where they matter",
          "[hours]") {
  const std::string_view text = "Mo-Fr 07:00-10:00; PH off";
  CHECK(asked(text, monday(8), nothing_known()) == unknown_for(Reason::no_holidays));
  CHECK(asked(text, monday(12), nothing_known()) == no);  // off, whatever day it is
  CHECK(asked("Mo-Fr 07:00-10:00", monday(8), nothing_known()) == yes);
  CHECK(asked("PH,Mo 07:00-10:00", monday(8), nothing_known()) == yes);
  CHECK(asked("PH off; Mo-Fr 07:00-10:00", monday(8), nothing_known()) == yes);
  CHECK(asked("PH", monday(8), nothing_known()) == unknown_for(Reason::no_holidays));
}

TEST_CASE("a year outside the table of bank holidays is unknown", "[hours]") {
  const Setting england("GB-ENG", "Europe/London", std::nullopt);
  const CivilTime far_off{{2090, 11, 27}, 8, 0, 0};  // a Monday
  CHECK(asked("Mo-Fr 07:00-10:00; PH off", far_off, england) == unknown_for(Reason::no_holidays));
}

TEST_CASE("school holidays are unknown without term dates and known with them", "[hours]") {
  const std::string_view text = "Mo-Fr 08:00-09:00; SH off";
  CHECK(asked(text, monday(8), nothing_known()) == unknown_for(Reason::no_terms));
  CHECK(asked(text, monday(10), nothing_known()) == no);
  const SchoolTerms terms({{{2026, 10, 26}, {2026, 11, 27}}, {{2026, 12, 1}, {2026, 12, 18}}});
  const Setting at_school("GB-ENG", "Europe/London", std::nullopt, terms);
  CHECK(asked(text, monday(8), at_school) == no);  // between two parts of the term
  CHECK(asked(text, {{2026, 12, 2}, 8, 0, 0}, at_school) == yes);
  CHECK(asked(text, {{2027, 1, 4}, 8, 0, 0}, at_school) == unknown_for(Reason::no_terms));
  CHECK(asked("SH Mo-Fr 08:00-09:00", monday(8), at_school) == yes);
  CHECK(asked("SH,Mo-Fr 08:00-09:00", {{2026, 12, 2}, 8, 0, 0}, at_school) == yes);
}

TEST_CASE("more than six holidays that nobody knows leave the answer unknown", "[hours]") {
  std::string text = "24/7";
  for (const std::string_view days : {"1", "2", "3"}) {
    text += ", PH -" + std::string(days) + " days,PH +" + std::string(days) + " days 10:00-11:00";
  }
  CHECK(asked(text, monday(8), nothing_known()) == yes);
  CHECK(asked(text + ", PH 10:00-11:00", monday(8), nothing_known()) ==
        unknown_for(Reason::no_holidays));
}

TEST_CASE("each unknown has its own reason", "[hours]") {
  CHECK(asked("Mo 07:00+", monday(8), nothing_known()) == unknown_for(Reason::open_end));
  CHECK(asked("Mo unknown", monday(8), nothing_known()) == unknown_for(Reason::said_unknown));
  CHECK(asked("\"ask\"", monday(8), nothing_known()) == unknown_for(Reason::comment));
  CHECK(asked("Mo-", monday(8), nothing_known()) == unknown_for(Reason::unreadable));
  CHECK(asked("sunrise-10:00", monday(8), nothing_known()) == unknown_for(Reason::no_sun));
}

TEST_CASE("without a place hours by the sun are unknown between the ends that are told",
          "[hours]") {
  const auto at = [](std::string_view text, int hour) {
    return asked(text, monday(hour), nothing_known());
  };
  CHECK(at("sunrise-10:00", 9) == unknown_for(Reason::no_sun));
  CHECK(at("sunrise-10:00", 10) == no);
  CHECK(at("16:00-sunset", 15) ==
        unknown_for(Reason::no_sun));  // of the day before, for all we know
  CHECK(at("Mo 16:00-sunset", 15) == no);
  CHECK(at("Mo 16:00-sunset", 16) == unknown_for(Reason::no_sun));
}

TEST_CASE("without a place what a text names by the clock beside the sun still holds", "[hours]") {
  const auto at = [](std::string_view text, int hour) {
    return asked(text, monday(hour), nothing_known());
  };
  for (const std::string_view text :
       {"07:00-10:00,sunset-22:00", "sunset-22:00,07:00-10:00", "07:00-10:00,15:00-sunset",
        "Mo-Su 07:00-10:00,sunset-22:00", "off || 07:00-10:00,sunset-22:00"}) {
    CHECK(at(text, 8) == yes);
    CHECK(at(text, 11) == unknown_for(Reason::no_sun));
  }
  CHECK(at("24/7; Mo 07:00-10:00,sunset-22:00 off", 8) == no);
}

TEST_CASE("one part that doesn't hold settles a condition, one that is unknown leaves it open",
          "[hours]") {
  CHECK(condition("Mo 07:00-10:00 AND wet") == yes);
  CHECK(condition("Mo 07:00-10:00 AND delivery") == no);
  CHECK(condition("Mo 11:00-12:00 AND wet") == no);
  CHECK(condition("Mo 07:00-10:00 AND snow") == unknown_for(Reason::road_state));
  CHECK(condition("Mo 11:00-12:00 AND snow") == no);
  CHECK(condition("snow AND delivery") == no);
  CHECK(condition("snow AND PH") == unknown_for(Reason::no_holidays));
  CHECK(condition("weight>7.5") == unknown_for(Reason::property));
  CHECK(condition("residents") == unknown_for(Reason::user));
  CHECK(condition("when it suits") == unknown_for(Reason::unreadable));
}

TEST_CASE("hundreds of spans by a sun that nobody knows are one unknown, all the year", "[hours]") {
  std::string text = "sunrise-sunset";
  for (int k = 1; k <= 400; ++k) {
    const std::string minutes = std::to_string(k / 60) + ":" + (k % 60 < 10 ? "0" : "");
    text += ", (sunrise+0" + minutes + std::to_string(k % 60) + ")-sunset";
  }
  const Hours hours = read_hours(text);
  REQUIRE(hours.readable());
  const Setting nowhere("GB-ENG", "Europe/London", std::nullopt);
  const Instant begin{days_since_epoch({2026, 11, 28}) * 86'400, 0};
  CHECK(hours.at(begin.civil(), nowhere).reason == Reason::no_sun);
  CHECK_FALSE(hours.next_change(begin, nowhere).has_value());
}

}  // namespace loopwright::hours
