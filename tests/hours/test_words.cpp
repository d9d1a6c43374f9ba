// How an instructor says hours: our own words (DECISIONS.md, say's times of day); no outside
// source.
#include <catch2/catch.hpp>

#include "loopwright/hours/timetable.hpp"

namespace loopwright::hours {
namespace {

std::string words_of(std::string_view text) {
  return read_hours(text).words();
}

}  // namespace

TEST_CASE("what can't be read is said as it stands", "[hours]") {
  CHECK(words_of("").empty());
  CHECK(words_of("Mo-Fr 0700-") == "Mo-Fr 0700-");
}

TEST_CASE("hours are said in words", "[hours]") {
  CHECK(words_of("Mo-Sa 07:00-10:00,16:00-19:00") ==
        "Monday to Saturday, seven till ten and four till seven");
  CHECK(words_of("24/7") == "at any time");
  CHECK(words_of("off") == "never");
  CHECK(words_of("07:00-19:00") == "every day, seven till seven");
  CHECK(words_of("Mo-Fr 07:30-09:15") ==
        "Monday to Friday, half past seven till quarter past nine");
  CHECK(words_of("Mo,We,Fr 07:00-24:00") ==
        "Monday, Wednesday and Friday, seven in the morning till midnight");
  CHECK(words_of("22:00-06:00") == "every day, ten at night till six in the morning");
}

TEST_CASE("a condition is said with its road state, property or user", "[hours]") {
  CHECK(Condition("wet").words() == "when it is wet");
  CHECK(Condition("flashing").words() == "when lights flash");
  CHECK(Condition("Mo-Fr 07:00-10:00 AND weight>7.5").words() ==
        "Monday to Friday, seven till ten and with weight>7.5");
}

TEST_CASE("every reason has its words but those that need none", "[hours]") {
  for (std::size_t k = 0; k < reason_count; ++k) {
    const auto reason = static_cast<Reason>(k);
    CHECK(words(reason).empty() == (reason == Reason::stated || reason == Reason::holiday));
  }
}

}  // namespace loopwright::hours
