// Against the reference implementation of the grammar, npm opening_hours 3.15.0, asked for England
// at noon of days in a row (O in force, C not, U unknown); where it
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

/// The answers at noon of 10 to 31 days in a row, as many as it takes to see the pattern.
std::string noons(std::string_view text, Date first, int count) {
  const Hours hours = read_hours(text);
  REQUIRE(hours.readable());
  std::string letters;
  for (int k = 0; k < count; ++k) {
    const Date day = date_from_days(days_since_epoch(first) + k);
    letters += letter(hours.at(CivilTime{day, 12, 0, 0}, england()).in_force);
  }
  return letters;
}

}  // namespace

TEST_CASE("a date comes every year, a range of dates may go over New Year", "[hours]") {
  CHECK(noons("Dec 25", {2026, 12, 1}, 31) == "CCCCCCCCCCCCCCCCCCCCCCCCOCCCCCC");
  CHECK(noons("Dec 30-Jan 2", {2026, 12, 28}, 10) == "CCOOOOCCCC");
  CHECK(noons("Dec 24,26", {2026, 12, 20}, 10) == "CCCCOCOCCC");
}

TEST_CASE("a month is its first to its last day, and a range of months may go over New Year",
          "[hours]") {
  CHECK(noons("Dec", {2026, 12, 28}, 10) == "OOOOCCCCCC");
  CHECK(noons("Jan-Sep", {2026, 9, 28}, 10) == "OOOCCCCCCC");
  CHECK(noons("Oct-Mar", {2026, 9, 28}, 10) == "CCCOOOOOOO");
  CHECK(noons("Apr-Sep Sa,Su", {2026, 9, 28}, 10) == "CCCCCCCCCC");
}

TEST_CASE("the twenty-ninth of February comes in leap years alone", "[hours]") {
  CHECK(noons("Feb 29", {2028, 2, 25}, 10) == "CCCCOCCCCC");
  CHECK(noons("Feb", {2028, 2, 25}, 10) == "OOOOOCCCCC");
  CHECK(noons("Feb 29", {2027, 2, 25}, 10) == "CCCCCCCCCC");
}

TEST_CASE("a year, a range of years and every second year are told apart", "[hours]") {
  CHECK(noons("2026", {2026, 12, 28}, 10) == "OOOOCCCCCC");
  CHECK(noons("2027+", {2026, 12, 28}, 10) == "CCCCOOOOOO");
  CHECK(noons("2025-2027/2", {2026, 12, 28}, 10) == "CCCCOOOOOO");
  CHECK(noons("2026 Dec 30-2027 Jan 2", {2026, 12, 28}, 10) == "CCOOOOCCCC");
}

// Specification, monthday_range: "<date>+"; the reference can't read it.
TEST_CASE("a date with a year may have no end", "[hours]") {
  CHECK(noons("2026 Feb 24+", {2026, 2, 20}, 14) == "CCCCOOOOOOOOOO");
}

// Specification, monthday_range "/ <positive_number>"; the reference can't read it.
TEST_CASE("every third day of a range of dates is counted from its first", "[hours]") {
  CHECK(noons("Nov 1-Nov 13/3", {2026, 11, 1}, 14) == "OCCOCCOCCOCCOC");
}

TEST_CASE("Easter moves, and days are counted from it", "[hours]") {
  CHECK(noons("easter", {2026, 4, 1}, 10) == "CCCCOCCCCC");
  CHECK(noons("easter -2 days", {2026, 4, 1}, 10) == "CCOCCCCCCC");
  CHECK(noons("easter", {2027, 3, 24}, 10) == "CCCCOCCCCC");
  // Good Friday to Easter Monday, the end included (specification); the reference leaves it out.
  CHECK(noons("easter -2 days-easter +1 day", {2026, 4, 1}, 10) == "CCOOOOCCCC");
}

TEST_CASE("the last Monday of May is a date of its own", "[hours]") {
  CHECK(noons("May Mo[-1]", {2026, 5, 20}, 14) == "CCCCCOCCCCCCCC");
  CHECK(noons("Mar Su[-1]-Oct Su[-1]", {2026, 10, 20}, 14) == "OOOOOOCCCCCCCC");
}

// Gregorian calendar: 2000 was a leap year, 2100 won't be. 29 February 2000 was a Tuesday, 22 February 2100 is a
// Monday and 23 February a Tuesday.
TEST_CASE("the last Tuesday of February hangs on whether the year is a leap year", "[hours]") {
  CHECK(noons("Feb Tu[-1]", {2000, 2, 20}, 11) == "CCCCCCCCCOC");
  CHECK(noons("Feb Tu[-1]", {2100, 2, 20}, 11) == "CCCOCCCCCCC");
}

// Specification, weekday offset; 25 December 2026 is a Friday. The reference can't read it.
TEST_CASE("a date may be moved back to the Sunday before", "[hours]") {
  CHECK(noons("Dec 25 -Su", {2026, 12, 18}, 12) == "CCOCCCCCCCCC");
}

// Specification, days and weekday offset; 1 January 2027 is a Friday.
TEST_CASE("a date may be moved back over New Year", "[hours]") {
  CHECK(noons("Jan 1 -1 day", {2026, 12, 25}, 12) == "CCCCCCOCCCCC");
  CHECK(noons("Jan 1 -Su", {2026, 12, 18}, 20) == "CCCCCCCCCOCCCCCCCCCC");
  CHECK(noons("Jan 1 -3 days-Jan 2", {2026, 12, 25}, 12) == "CCCCOOOOOCCC");
  CHECK(noons("Dec 31 +2 days", {2026, 12, 25}, 12) == "CCCCCCCCOCCC");
}

TEST_CASE("weeks are those of ISO 8601, the fifty-third included", "[hours]") {
  CHECK(noons("week 1", {2026, 1, 1}, 10) == "OOOOCCCCCC");
  CHECK(noons("week 53", {2026, 12, 26}, 14) == "CCOOOOOOOCCCCC");
  CHECK(noons("week 48-52/2", {2026, 11, 20}, 21) == "CCCOOOOOOOCCCCCCCOOOO");
  CHECK(noons("week 48 Mo-Fr", {2026, 11, 20}, 21) == "CCCOOOOOCCCCCCCCCCCCC");
  // Over New Year: common practice, the reference can't read it.
  CHECK(noons("week 52-1", {2026, 12, 26}, 20) == "OOOOOOOOOOOOOOOOCCCC");
}

TEST_CASE("the nth weekday is counted from either end of the month", "[hours]") {
  CHECK(noons("Mo[1]", {2026, 11, 1}, 30) == "COCCCCCCCCCCCCCCCCCCCCCCCCCCCC");
  CHECK(noons("Mo[-1]", {2026, 11, 1}, 30) == "CCCCCCCCCCCCCCCCCCCCCCCCCCCCCO");
  CHECK(noons("Mo[5]", {2026, 11, 1}, 30) == "CCCCCCCCCCCCCCCCCCCCCCCCCCCCCO");
  CHECK(noons("Tu[1,3-4]", {2026, 11, 1}, 30) == "CCOCCCCCCCCCCCCCOCCCCCCOCCCCCC");
}

TEST_CASE("the day after the first Monday is moved with it", "[hours]") {
  CHECK(noons("Mo[1] +1 day", {2026, 11, 1}, 30) == "CCOCCCCCCCCCCCCCCCCCCCCCCCCCCC");
  CHECK(noons("Su[-1] -2 days", {2026, 11, 1}, 30) == "CCCCCCCCCCCCCCCCCCCCCCCCCCOCCC");
}

TEST_CASE("bank holidays stand alone, beside weekdays, and before or after them", "[hours]") {
  CHECK(noons("PH", {2026, 12, 20}, 14) == "CCCCCOOCOCCCOC");
  CHECK(noons("PH -1 day", {2026, 12, 20}, 14) == "CCCCOOCOCCCOCC");
  CHECK(noons("PH +1 day", {2026, 12, 20}, 14) == "CCCCCCOOCOCCCO");
  CHECK(noons("PH,Sa", {2026, 12, 20}, 14) == "CCCCCOOCOCCCOO");
  CHECK(noons("PH Mo-Fr", {2026, 12, 20}, 14) == "CCCCCOCCOCCCOC");
  CHECK(noons("PH", {2026, 3, 28}, 14) == "CCCCCCOCCOCCCC");
}

TEST_CASE("weekdays hold on bank holidays unless the text says otherwise after them", "[hours]") {
  CHECK(noons("Mo-Fr", {2026, 12, 20}, 14) == "COOOOOCCOOOOOC");
  CHECK(noons("Mo-Fr; PH off", {2026, 12, 20}, 14) == "COOOOCCCCOOOCC");
  CHECK(noons("PH off; Mo-Fr", {2026, 12, 20}, 14) == "COOOOOCCOOOOOC");
  CHECK(noons("Mo-Fr; PH off", {2026, 8, 24}, 14) == "OOOOOCCCOOOOCC");
}

TEST_CASE("the last date of a range has nothing of the first but its year", "[hours]") {
  CHECK(noons("easter-Oct 31", {2026, 10, 28}, 8) == "OOOOCCCC");
  CHECK(noons("easter-Oct 31", {2026, 4, 1}, 8) == "CCCCOOOO");
  CHECK(noons("Nov Su[1]-Dec 25", {2026, 10, 29}, 8) == "CCCOOOOO");
  CHECK(noons("Nov Su[1]-Dec 25", {2026, 12, 22}, 8) == "OOOOCCCC");
}

TEST_CASE("the range of one year goes on over New Year into the next, and no further", "[hours]") {
  CHECK(noons("2026 Nov-Feb", {2026, 10, 30}, 4) == "CCOO");
  // The reference ends it with the year and can't read the other; common practice, no source.
  CHECK(noons("2026 Nov-Feb", {2027, 2, 26}, 6) == "OOOCCC");
  CHECK(noons("2026 Nov-Feb", {2027, 10, 30}, 4) == "CCCC");
  CHECK(noons("2026 Nov-Feb", {2026, 1, 1}, 4) == "CCCC");
  CHECK(noons("2026 Dec 20-Jan 05", {2026, 12, 18}, 5) == "CCOOO");
  CHECK(noons("2026 Dec 20-Jan 05", {2027, 1, 3}, 5) == "OOOCC");
  CHECK(noons("2026 Dec 20-Jan 05", {2027, 12, 18}, 5) == "CCCCC");
}

TEST_CASE("weekdays listed behind a month, or months, are those of the months", "[hours]") {
  // March 2026: Fridays 6, 13, 20, 27; Saturdays 7, 14, 21, 28. Easter holidays begin on 3 April.
  CHECK(noons("Mar Fr[-1],Sa", {2026, 3, 19}, 18) == "CCOCCCCCOOCCCCCCCC");
  CHECK(noons("Apr,Sep Fr[-1]", {2026, 4, 17}, 14) == "CCCCCCCOCCCCCC");
  CHECK(noons("Apr,Sep Fr[-1]", {2026, 9, 18}, 14) == "CCCCCCCOCCCCCC");
  CHECK(noons("Apr,Sep Fr[-1]", {2026, 10, 23}, 14) == "CCCCCCCCCCCCCC");
  CHECK(noons("Mar Fr[-2],PH", {2026, 3, 19}, 18) == "COCCCCCCCCCCCCCCCC");
}

TEST_CASE("years listed before a month are years of that month", "[hours]") {
  CHECK(noons("2025,2026 Nov 10:00-13:00", {2025, 10, 30}, 4) == "CCOO");
  CHECK(noons("2025,2026 Nov 10:00-13:00", {2026, 10, 30}, 4) == "CCOO");
  CHECK(noons("2025,2026 Nov 10:00-13:00", {2027, 10, 30}, 4) == "CCCC");
  CHECK(noons("2025,2026 Nov 10:00-13:00", {2025, 6, 1}, 4) == "CCCC");
  CHECK(noons("2024,2025,2026 Nov 10:00-13:00", {2024, 11, 29}, 4) == "OOCC");
}

// Dates of Easter: Book of Common Prayer, table to find Easter Day (from memory). The nineteenth of April 1981 and
// 2076 and the eighteenth of 1954 and 2049 are the years that a shorter rule gets wrong.
TEST_CASE("Easter is the Sunday of the church's tables", "[hours]") {
  for (const Date easter :
       {Date{1954, 4, 18}, Date{1981, 4, 19}, Date{2000, 4, 23}, Date{2008, 3, 23},
        Date{2024, 3, 31}, Date{2025, 4, 20}, Date{2026, 4, 5}, Date{2038, 4, 25},
        Date{2049, 4, 18}, Date{2076, 4, 19}, Date{2285, 3, 22}}) {
    const Date day_before = date_from_days(days_since_epoch(easter) - 1);
    CAPTURE(easter.year);
    CHECK(noons("easter", day_before, 3) == "COC");
  }
}

TEST_CASE("a month has a fifth weekday at most", "[hours]") {
  // 31 January 2027 is a Sunday, the fifth.
  CHECK(noons("Jan Su[5]", {2027, 1, 30}, 3) == "COC");
  CHECK_FALSE(read_hours("Jan Su[6] 10:00-12:00").readable());
  CHECK_FALSE(read_hours("Jan Su[0] 10:00-12:00").readable());
  CHECK(noons("Jan Su[-5]", {2027, 1, 2}, 3) == "COC");
}

}  // namespace loopwright::hours
