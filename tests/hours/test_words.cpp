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

TEST_CASE("seven to seven needs no part of the day, and one time beyond it gives all of them one",
          "[hours]") {
  CHECK(words_of("06:59-09:00") == "every day, one minute to seven till nine in the morning");
  CHECK(words_of("09:00-19:01") ==
        "every day, nine in the morning till one minute past seven in the evening");
  CHECK(words_of("18:59-20:00") == "every day, one minute to seven till eight in the evening");
  CHECK(words_of("08:00-10:00,20:00-22:00") ==
        "every day, eight till ten in the morning and eight in the evening till ten at night");
}

TEST_CASE("times that go round midnight are said with the next day where it could be missed",
          "[hours]") {
  CHECK(words_of("08:00-08:00") == "at any time");
  CHECK(words_of("Mo-Su 00:00-24:00") == "at any time");
  CHECK(words_of("Mo 08:00-08:00") ==
        "Monday, eight in the morning till eight in the morning the next day");
  CHECK(words_of("Mo 08:00-07:00") ==
        "Monday, eight in the morning till seven in the morning the next day");
  CHECK(words_of("Sa 17:00-12:00") == "Saturday, five in the afternoon till noon the next day");
  CHECK(words_of("Fr 22:00-02:00") == "Friday, ten at night till two in the morning");
}

TEST_CASE("what a rule takes from those before it is said with but", "[hours]") {
  CHECK(words_of("Mo-Fr 07:00-19:00; We 12:00-14:00 off") ==
        "Monday to Friday, seven till seven; but not on Wednesday, noon till two");
  CHECK(words_of("07:00-19:00; 12:00-14:00 off") ==
        "every day, seven till seven; but not from noon till two");
  CHECK(words_of("Mo-Su 07:00-19:00; Sa 08:00-12:00") ==
        "every day, seven till seven; but on Saturday, eight till noon");
  CHECK(words_of("Mo-Fr 07:00-10:00; PH off") ==
        "Monday to Friday, seven till ten; but not on bank holidays");
  CHECK(words_of("Mo-Fr 08:00-18:00; Aug off") ==
        "Monday to Friday, eight till six; but not in August");
  CHECK(words_of("Mo-Fr 08:00-18:00; Dec 24-Jan 2 off") ==
        "Monday to Friday, eight till six; but not from 24 December to 2 January");
  CHECK(words_of("Mo-Fr 07:00-10:00; Sa 08:00-10:00; Su off") ==
        "Monday to Friday, seven till ten; Saturday, eight till ten; not on Sunday");
}

TEST_CASE("what a rule adds to days before it is said with also", "[hours]") {
  CHECK(words_of("Mo-Fr 08:00-10:00, We 12:00-14:00") ==
        "Monday to Friday, eight till ten; and also Wednesday, noon till two");
  CHECK(words_of("Mo-Sa 08:00-13:00; 15:00-18:00") ==
        "Monday to Saturday, eight till one; and also every day, three till six");
  CHECK(words_of("Mo-Fr 08:00-10:00 || off") ==
        "Monday to Friday, eight till ten; otherwise never");
}

// Both parts stand on the plate when a mapper parted them by the wrong sign.
TEST_CASE("a rule that a later one replaces doesn't vanish without a word", "[hours]") {
  CHECK(words_of("Mo-Fr 07:00-10:00; Mo-Fr 16:00-19:00") ==
        "Monday to Friday, four till seven (\u201cseven till ten\u201d earlier in the text doesn't "
        "count)");
  CHECK(words_of("Sa 08:00-12:00; Mo-Su 07:00-19:00") ==
        "every day, seven till seven (\u201cSaturday, eight till noon\u201d earlier in the text "
        "doesn't count)");
  CHECK(words_of("Mo-Fr 07:00-10:00; off") ==
        "never (\u201cMonday to Friday, seven till ten\u201d earlier in the text doesn't count)");
  CHECK(words_of("Mo-Fr 07:00-10:00; Mo-Fr 07:00-10:00") == "Monday to Friday, seven till ten");
  CHECK(words_of("PH off; Mo-Fr 08:00-10:00") ==
        "not on bank holidays; Monday to Friday, eight till ten (even on bank holidays)");
  CHECK(words_of("PH off; 08:00-18:00") ==
        "not on bank holidays; every day, eight till six (even on bank holidays)");
  CHECK(words_of("Mo 12:00-14:00 off; 08:00-10:00") ==
        "not on Monday, noon till two; every day, eight till ten");
}

TEST_CASE("small hours that a later rule's day cuts off are said", "[hours]") {
  CHECK(words_of("Mo-Su 22:00-06:00; Sa 10:00-12:00") ==
        "every day, ten at night till six in the morning; but on Saturday, ten till noon (nothing "
        "else from midnight to midnight)");
  CHECK(words_of("22:00-06:00; Sa off") ==
        "every day, ten at night till six in the morning; but not on Saturday (from midnight to "
        "midnight)");
  CHECK(
      words_of("Fr 22:00-02:00; Fr 20:00-23:00") ==
      "Friday, eight in the evening till eleven at night (\u201cten at night till two in the "
      "morning\u201d earlier in the text doesn't count, but for what of it lies after midnight on "
      "Saturday)");
}

TEST_CASE("days taken from a rule that isn't the one before are said to have nothing else",
          "[hours]") {
  CHECK(words_of("Mo-Sa 07:00-10:00; Su off; Mo-Fr 16:00-19:00") ==
        "Monday to Saturday, seven till ten; not on Sunday; but on Monday to Friday, four till "
        "seven (nothing else from midnight to midnight)");
}

TEST_CASE("of days that are in force all day nothing is said to be cut off", "[hours]") {
  CHECK(words_of("Mo-Fr 19:00-07:00; Sa,Su") ==
        "Monday to Friday, seven in the evening till seven in the morning; Saturday and Sunday");
}

TEST_CASE("two kinds of days side by side are said as one", "[hours]") {
  CHECK(words_of("PH Su off") == "not on bank holidays that fall on Sunday");
  CHECK(words_of("Su PH off") == "not on bank holidays that fall on Sunday");
  CHECK(words_of("SH Mo-Fr 08:00-09:00") ==
        "Monday to Friday in the school holidays, eight till nine");
  CHECK(words_of("PH -1 day 08:00-12:00") == "the day before a bank holiday, eight till noon");
  CHECK(words_of("Aug Mo-Fr 08:00-12:00") == "Monday to Friday in August, eight till noon");
  CHECK(words_of("2026: Mo 08:00-09:00") == "Monday, in 2026, eight till nine");
}

TEST_CASE("what nobody can tell is never said as certain", "[hours]") {
  CHECK(words_of("\"\"") == "\u201c\u201d");
  CHECK(words_of("\"by arrangement\"") == "\u201cby arrangement\u201d");
  CHECK(words_of("24/7 \"on match days\"") == "\u201con match days\u201d");
  CHECK(words_of("Tu \"on match days\"") == "perhaps Tuesday (\u201con match days\u201d)");
  CHECK(words_of("Mo-Fr 06:00-22:00; Fr 08:00-12:00 unknown") ==
        "Monday to Friday, six in the morning till ten at night; but perhaps Friday, eight till "
        "noon");
}

TEST_CASE("words of the map never move the cursor", "[hours]") {
  CHECK(words_of("Mo 07:00-10:00 open \"a\x1b[2Jb\"") ==
        "Monday, seven till ten (\u201ca\ufffd[2Jb\u201d)");
  CHECK(words_of("Mo\n\x1b[2J") == "Mo \ufffd[2J");
  CHECK(Condition("7-\x1b").words() == "\u201c7-\ufffd\u201d, which can't be read");
}

TEST_CASE("a condition is said with its road state, property or user", "[hours]") {
  CHECK(Condition("wet").words() == "when it is wet");
  CHECK(Condition("flashing").words() == "when lights flash");
  CHECK(Condition("weight>7.5").words() == "when the weight is over 7.5 tonnes");
  CHECK(Condition("max_axle_load<=2 t").words() == "when the max axle load is at most 2 t");
  CHECK(Condition("hgv").words() == "for lorries");
  CHECK(Condition("").words() == "on a condition that is missing");
}

TEST_CASE("parts of a condition that must hold together are not heard as a list", "[hours]") {
  CHECK(Condition("Mo-Fr 07:00-10:00 AND weight>7.5").words() ==
        "Monday to Friday, seven till ten, and only when the weight is over 7.5 tonnes");
  CHECK(Condition("Mo-Fr 07:00-10:00; Sa 08:00-10:00 AND wet").words() ==
        "(Monday to Friday, seven till ten; Saturday, eight till ten), and only when it is wet");
  CHECK(
      Condition("hgv AND Mo-Fr 07:00-10:00 AND SH").words() ==
      "for lorries, and only on Monday to Friday, seven till ten, and only in the school holidays");
}

TEST_CASE("clauses that take away are said with but not", "[hours]") {
  CHECK(Timetable("yes @ (Mo-Fr 07:00-10:00); no @ (PH)").words() ==
        "Monday to Friday, seven till ten; but not on bank holidays");
  CHECK(Timetable("yes @ (24/7); no @ (Mo-Fr 07:00-10:00; Sa 08:00-10:00)").words() ==
        "at any time; but not (Monday to Friday, seven till ten; Saturday, eight till ten)");
  CHECK(Timetable("no @ (PH)").words() == "never");
}

TEST_CASE("every reason has its words but those that need none", "[hours]") {
  for (std::size_t k = 0; k < reason_count; ++k) {
    const auto reason = static_cast<Reason>(k);
    CHECK(words(reason).empty() == (reason == Reason::stated || reason == Reason::holiday));
  }
}

// The texts' meaning: OSM wiki, Key:opening_hours/specification.
TEST_CASE("days, months, weeks and years are said as a text gives them", "[hours]") {
  const auto days = [](std::string_view text) {
    const std::string said = words_of(std::string(text) + " 10:00-12:00");
    constexpr std::string_view time = ", ten till noon";
    CHECK_THAT(said, Catch::EndsWith(std::string(time)));
    return said.substr(0, said.size() - time.size());
  };
  CHECK(days("2026-2026 Mo") == "Monday, in 2026");
  CHECK(days("2024+ Mo") == "Monday, from 2024 on");
  CHECK(days("2024-2030/2 Mo") == "Monday, 2024 to 2030 every two years");
  CHECK(days("week 5 Mo") == "Monday, week 5");
  CHECK(days("week 10-20/2 Mo") == "Monday, weeks 10 to 20 every two weeks");
  CHECK(days("Jan 5-5") == "5 January");
  CHECK(days("Jan 05-31") == "5 January to 31 January");
  CHECK(days("Jan 02-Feb") == "2 January to the end of February");
  CHECK(days("Mar Mo-Fr") == "Monday to Friday in March");
  CHECK(days("Jan,Mar Mo") == "Monday, January and March");
  CHECK(days("Jan-Feb,Apr Mo") == "Monday, January to February and April");
  CHECK(days("2026 Mar 1+") == "from 1 March 2026 on");
  CHECK(days("2026 Mar 1-2027 Feb 28") == "1 March 2026 to 28 February 2027");
  CHECK(days("Jan 1-Dec 31/3") == "1 January to 31 December every three days");
  CHECK(days("Mar Su[-1]-Oct Su[-1]") == "the last Sunday in March to the last Sunday in October");
  CHECK(days("Dec 25 +Su") == "the Sunday from 25 December");
  CHECK(days("Dec 25 -Mo") == "the Monday up to 25 December");
  CHECK(days("easter") == "Easter Sunday");
  CHECK(days("easter -2 days") == "two days before Easter Sunday");
  CHECK(days("easter +1 day") == "the day after Easter Sunday");
}

TEST_CASE("weekdays and holidays are said as a text gives them", "[hours]") {
  const auto days = [](std::string_view text) {
    const std::string said = words_of(std::string(text) + " 10:00-12:00");
    return said.substr(0, said.find(", ten till noon"));
  };
  CHECK(days("Sa-Mo") == "Saturday to Monday");
  CHECK(days("Sa,Su") == "Saturday and Sunday");
  CHECK(days("Su,Mo,We") == "Wednesday, Sunday and Monday");
  CHECK(days("Mo[1,3]") == "the first and third Monday of the month");
  CHECK(days("Mo[5]") == "the fifth Monday of the month");
  CHECK(days("Mo[-1]") == "the last Monday of the month");
  CHECK(days("Mo[-2]") == "the second last Monday of the month");
  CHECK(days("Mo[1] +1 day") == "the day after the first Monday of the month");
  CHECK(days("Mo[1] -2 days") == "two days before the first Monday of the month");
  CHECK(days("PH") == "bank holidays");
  CHECK(days("PH -1 day") == "the day before a bank holiday");
  CHECK(days("PH,SH") == "bank holidays and school holidays");
  CHECK(days("Mo,PH") == "Monday and bank holidays");
  CHECK(days("PH Mo-Fr") == "bank holidays that fall on Monday to Friday");
  CHECK(days("SH Mo-Fr") == "Monday to Friday in the school holidays");
  CHECK(days("Mo-Fr SH") == "Monday to Friday in the school holidays");
}

TEST_CASE("twelve-hour times and times by the sun are said", "[hours]") {
  CHECK(words_of("Mo 12:59 pm-1:30 pm") == "Monday, one minute to one till half past one");
  CHECK(words_of("Mo 1:00 am-1:30 am") == "Monday, one till half past one in the morning");
  CHECK(words_of("Mo 12:00 am-12:30 pm") ==
        "Monday, midnight till half past twelve in the afternoon");
  for (const char* none : {"Mo 0:30 am-1:30 pm", "Mo 13:00 am-1:30 pm"})
    CHECK(words_of(none) == none);
  CHECK(words_of("Mo sunrise-sunset") == "Monday, sunrise till sunset");
  CHECK(words_of("Mo (sunrise-00:30)-(sunset+00:15)") ==
        "Monday, thirty minutes before sunrise till fifteen minutes after sunset");
  CHECK(words_of("Mo 10:00-sunset") == "Monday, ten till sunset");
  CHECK(words_of("Mo 10:00+") == "Monday, from ten on");
  CHECK(words_of("Mo 10:00-12:00+") == "Monday, ten till noon and from noon on");
  CHECK(words_of("Mo 00:00-24:00") == "Monday");
  CHECK(words_of("Mo 10:15-10:45,11:30-11:59") ==
        "Monday, quarter past ten till quarter to eleven and half past eleven till one minute to "
        "twelve");
}

TEST_CASE("each relation of a property is said, and whom a word means", "[hours]") {
  const auto words = [](std::string_view text) { return Condition(text).words(); };
  CHECK(words("length<10") == "when the length is under 10 metres");
  CHECK(words("length>10") == "when the length is over 10 metres");
  CHECK(words("width<=2.1") == "when the width is at most 2.1 metres");
  CHECK(words("height>=2") == "when the height is at least 2 metres");
  CHECK(words("weight=7.5") == "when the weight is 7.5 tonnes");
}

TEST_CASE("each quarter, minute and part of a day is said", "[hours]") {
  CHECK(words_of("11:29-11:31") ==
        "every day, twenty-nine minutes past eleven till twenty-nine minutes to twelve");
  CHECK(words_of("17:59-18:00") == "every day, one minute to six till six");
  CHECK(words_of("17:59-20:00") ==
        "every day, one minute to six in the afternoon till eight in the evening");
  CHECK(words_of("18:00-20:00") == "every day, six till eight in the evening");
  CHECK(words_of("21:59-23:00") ==
        "every day, one minute to ten in the evening till eleven at night");
  CHECK(words_of("22:00-23:00") == "every day, ten till eleven at night");
  CHECK(words_of("(sunset-01:00)-(sunset+02:00)") ==
        "every day, one hour before sunset till two hours after sunset");
  CHECK(words_of("(dawn+00:01)-(dusk-00:02)") ==
        "every day, one minute after dawn till two minutes before dusk");
}

// A list of weekdays behind a month is one of that month: OSM wiki, Key:opening_hours/specification.
TEST_CASE("weekdays listed behind an nth one of a month are said as that month's", "[hours]") {
  CHECK(words_of("Jan Su[1],Sa 10:00-12:00") ==
        "Saturday and the first Sunday of the month in January, ten till noon");
  CHECK(words_of("Jan Su[-1],Sa 10:00-12:00") ==
        "Saturday and the last Sunday of the month in January, ten till noon");
  CHECK(words_of("Jan Su[1],PH 10:00-12:00") ==
        "the first Sunday of the month and bank holidays in January, ten till noon");
  CHECK(words_of("Jan Su[1],Feb Mo[1] 10:00-12:00") ==
        "the first Sunday in January and the first Monday in February, ten till noon");
}

}  // namespace loopwright::hours
