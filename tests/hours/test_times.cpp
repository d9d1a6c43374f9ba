// Against the reference implementation of the grammar, npm opening_hours 3.15.0, asked for England
// at half past each hour of Wednesday 25 November 2026 (O in force, C not, U unknown); where it
// has no answer or a wrong one, against OSM wiki Key:opening_hours/specification, named there.
#include <catch2/catch.hpp>

#include "loopwright/hours/hours.hpp"

namespace loopwright::hours {
namespace {

const Setting& england() {
  static const Setting setting("GB-ENG", "Europe/London", point_from_degrees(51.4779, 0.0));
  return setting;
}

char letter(Tri answer) {
  return answer == Tri::yes ? 'O' : answer == Tri::no ? 'C' : 'U';
}

/// The answers at 00:30, 01:30 … 23:30.
std::string wednesday(std::string_view text) {
  const Hours hours = read_hours(text);
  std::string letters;
  for (int hour = 0; hour < 24; ++hour) {
    letters += letter(hours.at(CivilTime{{2026, 11, 25}, hour, 30, 0}, england()).in_force);
  }
  return letters;
}

}  // namespace

// Trap 11 of MAP-TAGS.md.
TEST_CASE("hours past midnight are those of the night before too", "[hours]") {
  CHECK(wednesday("22:00-06:00") == "OOOOOOCCCCCCCCCCCCCCCCOO");
  CHECK(wednesday("22:00-26:00") == "OOCCCCCCCCCCCCCCCCCCCCOO");
  CHECK(wednesday("We 22:00-02:00") == "CCCCCCCCCCCCCCCCCCCCCCOO");
}

TEST_CASE("a day may be said as from midnight to midnight, or from an hour to the same",
          "[hours]") {
  CHECK(wednesday("00:00-24:00") == "OOOOOOOOOOOOOOOOOOOOOOOO");
  CHECK(wednesday("07:00-24:00") == "CCCCCCCOOOOOOOOOOOOOOOOO");
  CHECK(wednesday("07:00-07:00") == "OOOOOOOOOOOOOOOOOOOOOOOO");
}

TEST_CASE("an end that isn't given is unknown, and guessed at as the reference does", "[hours]") {
  CHECK(wednesday("07:00+") == "CCCCCCCUUUUUUUUUUUUUUUUU");
  CHECK(wednesday("17:00+") == "UUUCCCCCCCCCCCCCCUUUUUUU");
  CHECK(wednesday("22:00+") == "UUUUUUCCCCCCCCCCCCCCCCUU");
  // Perhaps longer than noon: specification, "<time>-<time>+"; the reference drops the "+".
  CHECK(wednesday("07:00-12:00+") == "CCCCCCCOOOOOUUUUUUUUUUUU");
}

TEST_CASE("times by the sun are those of the place and the day", "[hours]") {
  CHECK(wednesday("sunrise-sunset") == "CCCCCCCCOOOOOOOOCCCCCCCC");
  CHECK(wednesday("dawn-dusk") == "CCCCCCCOOOOOOOOOOCCCCCCC");
  CHECK(wednesday("(sunrise+02:00)-(sunset-01:30)") == "CCCCCCCCCCOOOOCCCCCCCCCC");
  CHECK(wednesday("sunset-sunrise") == "OOOOOOOOCCCCCCCCOOOOOOOO");
  CHECK(wednesday("10:00-sunset") == "CCCCCCCCCCOOOOOOCCCCCCCC");
}

// Trap 8 of MAP-TAGS.md: mappers lose the morning by writing ';' for ','.
TEST_CASE("after a semicolon a rule replaces, after a comma it adds", "[hours]") {
  CHECK(wednesday("Mo-Fr 07:00-10:00; Mo-Fr 16:00-19:00") == "CCCCCCCCCCCCCCCCOOOCCCCC");
  CHECK(wednesday("07:00-10:00; 16:00-19:00") == "CCCCCCCCCCCCCCCCOOOCCCCC");
  CHECK(wednesday("07:00-10:00, 16:00-19:00") == "CCCCCCCOOOCCCCCCOOOCCCCC");
}

TEST_CASE("a rule after two bars is for the time nothing before it speaks of", "[hours]") {
  CHECK(wednesday("Mo-Fr 07:00-10:00 || 12:00-14:00") == "CCCCCCCOOOCCOOCCCCCCCCCC");
  CHECK(wednesday("Mo-Fr 07:00-10:00 || \"by signal\"") == "UUUUUUUOOOUUUUUUUUUUUUUU");
}

TEST_CASE("a rule for the next day takes the small hours with it", "[hours]") {
  CHECK(wednesday("Tu 22:00-06:00; We 08:00-10:00") == "CCCCCCCCOOCCCCCCCCCCCCCC");
  CHECK(wednesday("Tu 22:00-06:00, We 08:00-10:00") == "OOOOOOCCOOCCCCCCCCCCCCCC");
  CHECK(wednesday("Tu 22:00-06:00; We off") == "CCCCCCCCCCCCCCCCCCCCCCCC");
}

TEST_CASE("off takes out its day, with a time just that time", "[hours]") {
  CHECK(wednesday("off") == "CCCCCCCCCCCCCCCCCCCCCCCC");
  CHECK(wednesday("closed") == "CCCCCCCCCCCCCCCCCCCCCCCC");
  CHECK(wednesday("24/7") == "OOOOOOOOOOOOOOOOOOOOOOOO");
  CHECK(wednesday("24/7; We off") == "CCCCCCCCCCCCCCCCCCCCCCCC");
  CHECK(wednesday("07:00-19:00; We off") == "CCCCCCCCCCCCCCCCCCCCCCCC");
  CHECK(wednesday("07:00-19:00; 12:00-14:00 off") == "CCCCCCCOOOOOCCOOOOOCCCCC");
  CHECK(wednesday("24/7 closed \"works\"") == "CCCCCCCCCCCCCCCCCCCCCCCC");
}

TEST_CASE("words instead of hours are unknown, words beside open aren't", "[hours]") {
  CHECK(wednesday("unknown") == "UUUUUUUUUUUUUUUUUUUUUUUU");
  CHECK(wednesday("07:00-19:00 unknown") == "CCCCCCCUUUUUUUUUUUUCCCCC");
  CHECK(wednesday("07:00-19:00; We 12:00-14:00 unknown") == "CCCCCCCCCCCCUUCCCCCCCCCC");
  CHECK(wednesday("\"by arrangement\"") == "UUUUUUUUUUUUUUUUUUUUUUUU");
  CHECK(wednesday("07:00-19:00 \"school days\"") == "CCCCCCCUUUUUUUUUUUUCCCCC");
  CHECK(wednesday("07:00-19:00 open \"always\"") == "CCCCCCCOOOOOOOOOOOOCCCCC");
}

TEST_CASE("a ban with an open end doesn't vanish before a further span", "[hours]") {
  // Both outside readers say no at half past five; that a ban must not vanish is ours.
  CHECK(wednesday("16:00+,07:00-10:00") == "CCCCCCCOOOCCCCCCUUUUUUUU");
}

TEST_CASE("what mappers write besides the grammar is read when it has one meaning", "[hours]") {
  CHECK(wednesday("Mon-Fri 7am-10am") == "CCCCCCCOOOCCCCCCCCCCCCCC");
  CHECK(wednesday("07:00-10:00 Mo-Fr") == "CCCCCCCOOOCCCCCCCCCCCCCC");
  CHECK(wednesday("mo-fr 07:00-10:00") == "CCCCCCCOOOCCCCCCCCCCCCCC");
  CHECK(wednesday("Mo-Fr: 07:00-10:00") == "CCCCCCCOOOCCCCCCCCCCCCCC");
  CHECK(wednesday("Mo–Fr 07:00–10:00") == "CCCCCCCOOOCCCCCCCCCCCCCC");
  CHECK(wednesday("Mo-Fr 07.00-10.00") == "CCCCCCCOOOCCCCCCCCCCCCCC");
  CHECK(wednesday("Wednesday 09-17") == "CCCCCCCCCOOOOOOOOCCCCCCC");
  CHECK(wednesday("Mo-Fr 7:00-10:00") == "CCCCCCCOOOCCCCCCCCCCCCCC");
  CHECK(wednesday("Mo-Fr 12am-12pm") == "OOOOOOOOOOOOCCCCCCCCCCCC");
}

}  // namespace loopwright::hours
