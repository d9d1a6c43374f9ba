// What counts as met. Common practice, no source: what was driven once has been met; how well is another matter.
#include <catch2/catch.hpp>

#include "book/sample.hpp"
#include "loopwright/book/met.hpp"

namespace loopwright::book {
namespace {

using road::Kind;
using road::Movement;

Lesson driven(std::vector<LessonPass> passes) {
  Lesson lesson;
  lesson.state = LessonState::driven;
  lesson.log.passes = std::move(passes);
  return lesson;
}

LessonPass pass_of(Kind kind, Movement movement = Movement::none) {
  return {{kind, movement}, 2, "", true};
}

TEST_CASE("without a lesson nothing is met", "[book][met]") {
  const Met met = met_by({});
  CHECK(met.lessons == 0);
  CHECK_FALSE(has_met(met, {Kind::zebra}));
  CHECK_FALSE(has_met_road(met, "town"));
  CHECK_FALSE(has_met_limit(met, 30, SpeedUnit::mph));
  CHECK_FALSE(has_met_light(met, "day"));
}

TEST_CASE("a pass is met by its movement, and only when it was driven", "[book][met]") {
  LessonPass not_driven = pass_of(Kind::zebra);
  not_driven.driven = false;
  const std::vector<Lesson> lessons{
      driven({pass_of(Kind::roundabout, Movement::right), not_driven})};
  const Met met = met_by(lessons);
  CHECK(has_met(met, {Kind::roundabout, Movement::right}));
  CHECK_FALSE(has_met(met, {Kind::roundabout, Movement::left}));
  CHECK_FALSE(has_met(met, {Kind::zebra}));
}

TEST_CASE("a special form is met as the general one, not the other way", "[book][met]") {
  const std::vector<Lesson> large{
      driven({pass_of(Kind::multi_lane_roundabout, Movement::left), pass_of(Kind::single_track)})};
  CHECK(has_met(met_by(large), {Kind::roundabout, Movement::left}));
  CHECK(has_met(met_by(large), {Kind::narrow_road}));
  const std::vector<Lesson> plain{driven({pass_of(Kind::roundabout, Movement::left)})};
  CHECK_FALSE(has_met(met_by(plain), {Kind::multi_lane_roundabout, Movement::left}));
}

TEST_CASE("what is only planned, or fell through, meets nothing", "[book][met]") {
  Lesson lesson = driven({pass_of(Kind::zebra)});
  lesson.plan = test::plan_of_two_passes();
  for (const LessonState state : {LessonState::planned, LessonState::not_driven}) {
    lesson.state = state;
    const Met met = met_by({&lesson, 1});
    CHECK(met.lessons == 0);
    CHECK_FALSE(has_met(met, {Kind::zebra}));
    CHECK_FALSE(has_met_road(met, "town"));
  }
}

TEST_CASE("roads and limits are met after half a minute over all lessons", "[book][met]") {
  std::vector<Lesson> lessons{driven({}), driven({})};
  lessons[0].plan.roads = {{"quiet", 3}, {"country", 0.3}};
  lessons[0].plan.limits = {{30, SpeedUnit::mph, 3}, {60, SpeedUnit::mph, 0.3}};
  const Met once = met_by({lessons.data(), 1});
  CHECK(has_met_road(once, "quiet"));
  CHECK_FALSE(has_met_road(once, "country"));
  CHECK(has_met_limit(once, 30, SpeedUnit::mph));
  CHECK_FALSE(has_met_limit(once, 30, SpeedUnit::kmh));
  CHECK_FALSE(has_met_limit(once, 60, SpeedUnit::mph));
  lessons[1].plan = lessons[0].plan;
  CHECK(has_met_road(met_by(lessons), "country"));
  CHECK(has_met_limit(met_by(lessons), 60, SpeedUnit::mph));
}

TEST_CASE("a pass that is had on one sort of road or limit alone meets that too", "[book][met]") {
  const std::vector<Lesson> lessons{driven(
      {pass_of(Kind::dual_carriageway), pass_of(Kind::country_road), pass_of(Kind::twenty_zone)})};
  const Met met = met_by(lessons);
  CHECK(has_met_road(met, "dual carriageway"));
  CHECK(has_met_road(met, "country"));
  CHECK_FALSE(has_met_road(met, "motorway"));
  CHECK(has_met_limit(met, 20, SpeedUnit::mph));
  CHECK_FALSE(has_met_limit(met, 20, SpeedUnit::kmh));
}

TEST_CASE("it is told of how many lessons the record is silent", "[book][met]") {
  std::vector<Lesson> lessons{driven({}), driven({}), driven({})};
  lessons[0].plan = test::plan_of_two_passes();
  lessons[0].log.conditions.light = "dusk";
  lessons[1].plan.roads = {{"town", 40}};  // of a book from before limits were kept
  const Met met = met_by(lessons);
  CHECK(met.lessons == 3);
  CHECK(met.without_roads == 1);
  CHECK(met.without_limits == 2);
  CHECK(met.without_light == 2);
  CHECK(has_met_light(met, "dusk"));
  CHECK_FALSE(has_met_light(met, "dark"));
}

}  // namespace
}  // namespace loopwright::book
