// A factor that was planted into noisy lessons is to be found again. The noise is room pace's own: an hour on the move
// scatters by 104 s, and every junction by its spread (src/rules/pace.txt).
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "loopwright/base/dice.hpp"
#include "loopwright/book/pace_learned.hpp"

namespace loopwright::book {
namespace {

double normal(Dice& dice) {
  const double u = 1 - dice.share(), v = dice.share();
  return std::sqrt(-2 * std::log(u)) * std::cos(2 * std::numbers::pi * v);
}

constexpr std::int64_t day_s = 86400, three_s = 1795878000;  // 28 November 2026, 15:00 UTC

Lesson lesson_at(int number, std::int64_t unix_s) {
  Lesson lesson;
  lesson.number = number;
  lesson.state = LessonState::driven;
  lesson.plan.start = {unix_s, 0};
  return lesson;
}

/// Forty minutes of road with 12 signals and 30 give-ways, at the pupil's factor.
LessonTrace trace_of(int number, double factor, Dice& dice) {
  LessonTrace trace{number, {}};
  const double road_s = factor * 1800 + normal(dice) * std::sqrt(3.0 * 1800);
  const double signals_s = factor * 12 * 30 + normal(dice) * 18 * std::sqrt(12.0);
  const double give_ways_s = factor * 30 * 14 + normal(dice) * 7 * std::sqrt(30.0);
  trace.traced.times = {{road::Control::none, 60, 1800, road_s},
                        {road::Control::give_way_far, 30, 30 * 14, give_ways_s},
                        {road::Control::signals, 12, 12 * 30, signals_s}};
  return trace;
}

TEST_CASE("of who has driven nothing the usual pace is taken", "[book][pace]") {
  const PaceLearned pace = learned_pace({}, {});
  CHECK(pace.factor == 1);
  CHECK(pace.lessons == 0);
  CHECK(pace.at(15) == 1);
}

// "recovers a planted factor within 3 % after ten noisy lessons": our own promise.
TEST_CASE("ten noisy lessons tell the pupil's factor to 3 %", "[book][pace]") {
  int by_minutes = 0;  // of a hundred pupils, whose recordings aren't there
  for (const double planted : {0.85, 0.95, 1.1, 1.25, 1.45})
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      Dice dice(seed);
      std::vector<Lesson> lessons;
      std::vector<LessonTrace> traces;
      for (int k = 1; k <= 10; ++k) {
        lessons.push_back(lesson_at(k, three_s + k * day_s));
        traces.push_back(trace_of(k, planted, dice));
      }
      INFO(planted << " " << seed);
      CHECK(learned_pace(lessons, traces).factor == Approx(planted).epsilon(0.03));
      // Of minutes alone, whole ones, as the pencil has them.
      for (Lesson& lesson : lessons) {
        lesson.plan.likely_s = 2580;
        lesson.log.minutes =
            static_cast<int>(std::lround((planted * 2580 + normal(dice) * 120) / 60));
      }
      const double factor = learned_pace(lessons, {}).factor;
      CHECK(factor == Approx(planted).epsilon(0.05));
      by_minutes += std::abs(factor - planted) <= 0.03 * planted ? 1 : 0;
    }
  CHECK(by_minutes >= 95);
}

TEST_CASE("one lesson moves the factor only part of the way, and never beyond its bounds",
          "[book][pace]") {
  Lesson lesson = lesson_at(1, three_s);
  lesson.plan.likely_s = 2400;
  lesson.log.minutes = 60;  // 1.5 times as long
  const double once = learned_pace(std::vector{lesson}, {}).factor;
  CHECK(once == Approx((3600.0 + 1200) / (2400 + 1200)));
  lesson.log.minutes = 600;
  CHECK(learned_pace(std::vector{lesson}, {}).factor == 1.6);
  lesson.log.minutes = 1;
  CHECK(learned_pace(std::vector{lesson}, {}).factor == 0.8);
  lesson.state = LessonState::planned;
  CHECK(learned_pace(std::vector{lesson}, {}).lessons == 0);
}

TEST_CASE("what was planned by the pupil's own pace teaches no second one", "[book][pace]") {
  std::vector<Lesson> usual, own;
  for (int k = 1; k <= 10; ++k) {
    Lesson lesson = lesson_at(k, three_s + k * day_s);
    lesson.plan.likely_s = 2400;
    lesson.log.minutes = 50;  // 1.25 times as long
    usual.push_back(lesson);
    lesson.plan.wish = "minutes 50\npace 1.25\nwant roundabout=2\n";
    lesson.plan.likely_s = 3000;
    own.push_back(lesson);
  }
  CHECK(learned_pace(own, {}).factor == Approx(learned_pace(usual, {}).factor));
}

TEST_CASE("junctions and hours have factors of their own when there is enough of them",
          "[book][pace]") {
  std::vector<Lesson> lessons;
  std::vector<LessonTrace> traces;
  for (int k = 1; k <= 8; ++k) {
    const bool rush = k % 2 == 0;  // at five everything takes half as long again
    lessons.push_back(lesson_at(k, three_s + k * day_s + (rush ? 7200 : 0)));
    const double factor = rush ? 1.5 : 1.0;
    LessonTrace trace{k, {}};
    trace.traced.times = {{road::Control::none, 60, 2000, 2000 * factor},
                          {road::Control::signals, 10, 300, 600 * factor},
                          {road::Control::zebra, 2, 20, 60}};
    traces.push_back(trace);
  }
  const PaceLearned pace = learned_pace(lessons, traces);
  CHECK(pace.at(17) > 1.15 * pace.at(15));
  REQUIRE(pace.controls.size() == 2);  // 16 zebras are too few
  CHECK(pace.controls[1].control == road::Control::signals);
  CHECK(pace.controls[1].factor > 1.2 * pace.controls[0].factor);
}

}  // namespace
}  // namespace loopwright::book
