// What is shut by the clock, at the time the drive is there. The meaning of the tags: OSM wiki, pages
// Conditional restrictions and Key:opening_hours/specification; that doubt keeps the car out is ours.
#include <catch2/catch.hpp>

#include "loopwright/hours/zone.hpp"
#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;

namespace {

/// A square of streets; the tags of its east side are the test's.
std::string square(const std::string& east_tags, const std::string& more = {}) {
  return R"(
A . . B . . C
. . . . . . .
. . . . . . .
D . . E . . F
w1 AB highway=residential name=North_Street maxspeed=30_mph
w2 BC highway=residential name=North_Street maxspeed=30_mph
w3 CF highway=residential name=School_Lane maxspeed=30_mph )" +
         east_tags + R"(
w4 FE highway=residential name=South_Street maxspeed=30_mph
w5 EB highway=residential name=Middle_Street maxspeed=30_mph
w6 ED highway=residential name=South_Street maxspeed=30_mph
w7 DA highway=residential name=West_Street maxspeed=30_mph
)" + more;
}

/// The false claim of the drive ABCFEBA begun at a time of day of Monday 30 November 2026, or another.
std::string driven_at(const std::string& drawing, int hour, int minute, Date day = {2026, 11, 30}) {
  const BuiltTown town = built_town(drawing);
  wish::Wish wish;
  wish.start = hours::instant_in("Europe/London", {day, hour, minute, 0});
  wish.through = {town.roads().nodes[town.node('C').index()].at};
  return falsehood(town, true_answer(town, "ABCFEBA", wish));
}

const char* const school = "motor_vehicle:conditional=\"no @ (Mo-Fr 08:15-09:15)\"";

}  // namespace

TEST_CASE("a school street may be driven outside its hours", "[proof]") {
  CHECK(driven_at(square(school), 7, 0) == "");
  CHECK(driven_at(square(school), 10, 0) == "");
  CHECK(driven_at(square(school), 8, 30, {2026, 11, 28}) == "");  // a Saturday
}

TEST_CASE("a school street driven in its hours is told with its tag and the time", "[proof]") {
  CHECK(
      driven_at(square(school), 8, 30) ==
      "loop 1, stretch 2 (way 3): it is shut, or may be, by motor_vehicle:conditional=no @ (Mo-Fr "
      "08:15-09:15); the drive is there 08:30 to 08:31");
}

TEST_CASE("a school street that shuts while the drive may still be in it is told", "[proof]") {
  CHECK(driven_at(square(school), 8, 14) != "");
  CHECK(driven_at(square(school), 8, 10) == "");
  // Half past eight is over at a quarter past nine, but a slow drive from 09:14 is there before.
  CHECK(driven_at(square(school), 9, 14) != "");
  CHECK(driven_at(square(school), 9, 16) == "");
}

TEST_CASE("a street that only a replaced part of its hours shuts is not proved", "[proof]") {
  const std::string drawing =
      square("motor_vehicle:conditional=\"no @ (Mo-Fr 08:15-09:15; Mo-Fr 15:00-16:00)\"");
  CHECK_THAT(driven_at(drawing, 8, 30), Catch::Contains("it is shut, or may be") &&
                                            Catch::EndsWith("but a later part replaces it)"));
  CHECK(driven_at(drawing, 10, 0) == "");
}

TEST_CASE("a street that hangs on school holidays is told to want term dates", "[proof]") {
  const std::string drawing =
      square("motor_vehicle:conditional=\"no @ (Mo-Fr 08:15-09:15; SH off)\"");
  CHECK_THAT(
      driven_at(drawing, 8, 30),
      Catch::EndsWith("school holidays matter and no terms given reach that day: give --terms)"));
  CHECK(driven_at(drawing, 10, 0) == "");
}

TEST_CASE("a street with hours nobody can read is not driven", "[proof]") {
  CHECK_THAT(driven_at(square("motor_vehicle:conditional=\"no @ (school times)\""), 10, 0),
             Catch::Contains("it is shut, or may be"));
  CHECK_THAT(driven_at(square("motor_vehicle:conditional=\"no @ flashing\""), 10, 0),
             Catch::EndsWith("(it hangs on what is seen on the day)"));
}

TEST_CASE("a bus gate is a wall in its hours and a street outside them", "[proof]") {
  const std::string gate =
      square("motor_vehicle:conditional=\"no @ (Mo-Sa 07:00-19:00)\" bus=yes taxi=yes");
  CHECK_THAT(driven_at(gate, 12, 0), Catch::Contains("it is shut, or may be"));
  CHECK(driven_at(gate, 20, 0) == "");
  CHECK(driven_at(gate, 12, 0, {2026, 11, 29}) == "");  // a Sunday
}

TEST_CASE("a street that opens at some hours only is driven then", "[proof]") {
  const std::string drawing =
      square("motor_vehicle=no motor_vehicle:conditional=\"yes @ (18:00-08:00)\"");
  CHECK(driven_at(drawing, 20, 0) == "");
  CHECK(driven_at(drawing, 12, 0) != "");
}

TEST_CASE("a turn banned by the hour may be made at other hours", "[proof]") {
  const std::string drawing =
      square("",
             "r1 - from=w2 via=C to=w3 restriction:conditional=\"no_right_turn @ (Mo-Fr "
             "07:00-09:00)\"");
  CHECK(driven_at(drawing, 11, 0) == "");
  CHECK(driven_at(drawing, 8, 0) ==
        "loop 1, stretch 2 (way 3): relation 1 (restriction:conditional=no_right_turn @ (Mo-Fr "
        "07:00-09:00)) forbids it, or may; the drive is there 08:00 to 08:01");
}

TEST_CASE("who sets off when a ban ends hasn't waited for the turn before", "[proof]") {
  const std::string drawing =
      square("",
             "r1 - from=w2 via=C to=w3 restriction:conditional=\"no_right_turn @ (Mo-Fr "
             "07:00-09:00)\"");
  CHECK(driven_at(drawing, 9, 0) == "");
  CHECK(driven_at(drawing, 8, 59) != "");
}

TEST_CASE("an only by the hour binds in its hours", "[proof]") {
  const std::string drawing =
      square("",
             "r1 - from=w1 via=B to=w5 restriction:conditional=\"only_right_turn @ (Mo-Fr "
             "07:00-09:00)\"");
  CHECK(driven_at(drawing, 11, 0) == "");
  CHECK_THAT(driven_at(drawing, 8, 0), Catch::Contains("relation 1"));
}

TEST_CASE("on a Scottish bank holiday a street that names it is free", "[proof]") {
  const BuiltTown town = built_town(
      square("motor_vehicle:conditional=\"no @ (Mo-Fr 08:15-09:15; PH off)\""), "GB-SCT");
  wish::Wish wish;
  wish.start = hours::instant_in("Europe/London", {{2026, 11, 30}, 8, 30, 0});
  wish.through = {town.roads().nodes[town.node('C').index()].at};
  CHECK(falsehood(town, true_answer(town, "ABCFEBA", wish)) == "");
}

// What a bus lane says: DECISIONS, "The verdict on a bus lane".
TEST_CASE("the verdict on a bus lane must be that of its hours when the drive is there",
          "[proof]") {
  // The lesson drives along way 8 some minutes after three on a Saturday.
  const auto holds = [](const std::string& hours, wish::Verdict verdict) {
    std::string drawing = lesson_drawing;
    const std::size_t tags = drawing.find("w8 LW");
    drawing.replace(tags, drawing.find('\n', tags) - tags,
                    "w8 LW highway=tertiary name=Ferry_Lane maxspeed=30_mph lanes=3 "
                    "lanes:forward=2 lanes:backward=1 bus:lanes:forward" +
                        hours);
    const BuiltTown town = built_town(drawing);
    wish::Answer answer = true_answer(town, "ABrstuLWZAB");
    int passes = 0;
    for (wish::Pass& pass : answer.loops[0].passes)
      if (pass.kind == road::Kind::bus_lane) pass.verdict = verdict, ++passes;
    CHECK(passes == 1);
    return falsehood(town, answer) == "";
  };
  using wish::Verdict;
  const auto at = [](const std::string& when) {
    return ":conditional=\"designated|yes @ (" + when + ")\"";
  };
  const std::vector<std::pair<std::string, Verdict>> table{
      {at("Mo-Sa 16:00-19:00"), Verdict::usable},
      {at("Mo-Fr 07:00-19:00"), Verdict::usable},
      {at("Mo-Sa 15:00-19:00"), Verdict::in_force},
      {at("24/7"), Verdict::in_force},
      {at("Mo-Sa 07:00-15:02"), Verdict::check_the_plate},
      {at("SH 07:00-19:00"), Verdict::check_the_plate},
      {"=\"designated|yes\"", Verdict::check_the_plate}};
  for (const auto& [hours, verdict] : table)
    for (const Verdict said : {Verdict::usable, Verdict::in_force, Verdict::check_the_plate}) {
      CAPTURE(hours, static_cast<int>(said));
      CHECK(holds(hours, said) == (said == verdict));
    }
}

TEST_CASE("a turn banned by the hour is told behind turns that are banned always", "[proof]") {
  const std::string always = "r1 no_right_turn from=w1 via=B to=w5\n";
  const std::string hours =
      "r2 - from=w2 via=C to=w3 restriction:conditional=\"no_right_turn @ (Mo-Fr 07:00-09:00)\"\n";
  CHECK(driven_at(square("", always + hours), 11, 0) == "");
  CHECK_THAT(driven_at(square("", always + hours), 8, 0), Catch::Contains("relation 2 ("));
  // Two by the hour from one street: the second counts too.
  const std::string other =
      "r3 - from=w2 via=C to=w3 restriction:conditional=\"no_right_turn @ (Sa 07:00-09:00)\"\n";
  CHECK_THAT(driven_at(square("", other + hours), 8, 0), Catch::Contains("relation 2 ("));
  CHECK_THAT(driven_at(square("", hours + other), 8, 0, {2026, 11, 28}),
             Catch::Contains("relation 3 ("));
}
