// Lies about what a wish welcomes, joins, spaces, keeps off and caps.
#include <catch2/catch.hpp>

#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;
using road::Kind;
using road::Movement;
using wish::Answer;
using wish::Loop;
using wish::Wish;

namespace {

const auto nothing = [](Answer&) {};

Wish wanting(std::string_view want) {
  Wish wish;
  wish.wants = {wish::read_want(want)};
  return wish;
}

Point point_of(const BuiltTown& town, char letter) {
  return town.roads().nodes[town.node(letter).index()].at;
}

Wish keeping_off(std::string name, std::vector<Point> outline, std::string hours = "") {
  Wish wish;
  wish.keep_offs = {{std::move(name), std::move(outline), std::move(hours)}};
  return wish;
}

}  // namespace

TEST_CASE("a wrong count of a joined want is told", "[proof][wishes]") {
  // The level crossing at L leads onto Ferry Lane with its bus lane.
  const Wish joined = wanting("level-crossing+bus-lane");
  CHECK(lesson_with(nothing, joined) == "");
  CHECK(lesson_with([](Answer& answer) { answer.loops[0].met[0].got = 0; }, joined) ==
        "loop 1, passes that count for level-crossing+bus-lane=1: the file says '0', the area says "
        "'1'");
  CHECK(lesson_with([](Answer& answer) { answer.loops[0].met[0].got = 1; },
                    wanting("level-crossing+motorway")) ==
        "loop 1, passes that count for level-crossing+motorway=1: the file says '1', the area says "
        "'0'");
}

TEST_CASE("a wrong value with something welcome is told", "[proof][wishes]") {
  Wish wish;
  wish.welcome = {Kind::roundabout, Kind::level_crossing};
  CHECK(loop_with([](Loop& loop) { loop.certificate.value = 400; }, wish) == "");
  CHECK(loop_with([](Loop& loop) { loop.certificate.value = 200; }, wish) ==
        "loop 1, certificate, value: the file says 200.0, the area says 400.0");
  // A want takes its pass first.
  wish.wants = {wish::read_want("roundabout=1")};
  CHECK(loop_with([](Loop& loop) { loop.certificate.value = 200; }, wish) == "");
  wish.wants = {wish::read_want("roundabout=max")};
  CHECK(loop_with(
            [](Loop& loop) {
              practise(loop, Kind::roundabout);
              loop.certificate.value = 1200;
            },
            wish) == "");
}

TEST_CASE("passes that begin too soon don't count", "[proof][wishes]") {
  const BuiltTown town = lesson_town();
  Wish wish = wanting("level-crossing=2");
  wish.through = {point_of(town, 'B')};
  Answer answer = true_answer(town, "ABrstuLWZABrstuLWZAB", wish);
  CHECK(answer.loops[0].met[0].got == 2);
  CHECK(falsehood(town, answer) == "");
  answer.wish.spacings = {{Kind::level_crossing, 3600}};
  CHECK(falsehood(town, answer) ==
        "loop 1, passes that count for level-crossing=2: the file says '2', the area says '1'");
}

TEST_CASE("a street, a junction or an area that the wish keeps off is told when driven",
          "[proof][wishes]") {
  const BuiltTown town = lesson_town();
  const Point w = point_of(town, 'W'), z = point_of(town, 'Z'), l = point_of(town, 'L');
  const Point lane{w.lat_e7 / 2 + z.lat_e7 / 2, w.lon_e7 / 2 + z.lon_e7 / 2};
  CHECK(lesson_with(nothing, keeping_off("Slow Lane", {lane})) ==
        "loop 1, stretch 7 (way 7): it is on 'Slow Lane', which the wish keeps off");
  CHECK(lesson_with(nothing, keeping_off("the bend", {{l.lat_e7 + 500, l.lon_e7 + 500},
                                                      {l.lat_e7 - 500, l.lon_e7 + 500},
                                                      {l.lat_e7, l.lon_e7 - 500}})) ==
        "loop 1, stretch 5 (way 6): it lies in the area 'the bend', which the wish keeps off");
  CHECK(lesson_with(nothing, keeping_off("r", {point_of(town, 'r')})) ==
        "loop 1, stretch 1 (way 2): it goes through 'r', which the wish keeps off");
  CHECK(lesson_with(nothing, keeping_off("the quarry", {point_of(town, 'E')})) == "");
}

TEST_CASE("a keep-off counts at its hours alone, and when nobody can tell them",
          "[proof][wishes]") {
  const BuiltTown town = lesson_town();
  const Point w = point_of(town, 'W'), z = point_of(town, 'Z');
  const Point lane{w.lat_e7 / 2 + z.lat_e7 / 2, w.lon_e7 / 2 + z.lon_e7 / 2};
  CHECK(lesson_with(nothing, keeping_off("Slow Lane", {lane}, "Mo-Fr 08:00-09:00")) == "");
  CHECK(lesson_with(nothing, keeping_off("Slow Lane", {lane}, "Sa 15:03-15:30")) != "");
  CHECK(lesson_with(nothing, keeping_off("Slow Lane", {lane}, "SH 08:00-18:00")) != "");
}

TEST_CASE("a pass harder than allowed is told, though its kind was asked for", "[proof][wishes]") {
  Wish wish = wanting("level-crossing=1");
  wish.hardest = 5;
  CHECK(lesson_with(nothing, wish) == "");
  wish.hardest = 2;
  const std::string told = lesson_with(nothing, wish);
  CHECK(told.starts_with("loop 1, stretch 0 (way 1): it passes emerge ("));
  CHECK(told.ends_with(" of hardness 3, more than 2"));
}
