#include <catch2/catch.hpp>
#include <functional>
#include <vector>

#include "book/sample.hpp"
#include "loopwright/book/record_mark.hpp"

namespace loopwright::book {
namespace {

Lesson driven_lesson() {
  Lesson lesson;
  lesson.state = LessonState::driven;
  lesson.plan = test::plan_of_two_passes();
  lesson.log = test::log_of_two_passes();
  return lesson;
}

TEST_CASE("a lesson's mark changes with whatever is changed in it, but its loop file",
          "[book][mark]") {
  const std::string mark = mark_of(driven_lesson());
  CHECK(mark.size() == 32);
  CHECK(mark == mark_of(driven_lesson()));
  const std::vector<std::function<void(Lesson&)>> changes{
      [](Lesson& one) { one.number = 2; }, [](Lesson& one) { one.state = LessonState::planned; },
      [](Lesson& one) { one.plan.start.unix_s += 60; },
      [](Lesson& one) { one.plan.length_minutes = 90; },
      [](Lesson& one) { one.plan.wish += "level 3\n"; },
      [](Lesson& one) { one.plan.passes.pop_back(); },
      [](Lesson& one) { one.plan.roads[0].minutes += 0.5; },
      [](Lesson& one) { one.plan.limits.pop_back(); },
      [](Lesson& one) { one.plan.to_check[0].letter = "B"; },
      [](Lesson& one) { one.log.minutes.reset(); },
      [](Lesson& one) { one.log.passes[0].level = 3; },
      [](Lesson& one) { one.log.passes[0].help.reset(); },
      [](Lesson& one) { one.log.faults[0].count = 2; },
      [](Lesson& one) { one.log.interventions[0].why = "early"; },
      [](Lesson& one) { one.log.observations[0].day.day = 27; },
      [](Lesson& one) { one.log.mock.reset(); },
      [](Lesson& one) { one.log.conditions.light = "dark"; },
      // A text that moves from one place to the next isn't the same.
      [](Lesson& one) { one.log.remark = one.log.said + one.log.remark, one.log.said.clear(); },
      [](Lesson& one) { one.log.reached = one.log.goals, one.log.goals.clear(); },
      [](Lesson& one) { one.log.private_minutes = 0; }};
  for (std::size_t k = 0; k < changes.size(); ++k) {
    INFO(k);
    Lesson changed = driven_lesson();
    changes[k](changed);
    CHECK(mark_of(changed) != mark);
  }
  Lesson without_loops = driven_lesson();
  without_loops.plan.loop_file.clear();
  CHECK(mark_of(without_loops) == mark);
}

TEST_CASE("a record's mark is of what a proposal is made from", "[book][mark]") {
  Lesson other = driven_lesson();
  other.number = 2;
  const std::vector<Lesson> lessons{driven_lesson(), other}, turned{other, driven_lesson()};
  const std::string mark = mark_of(test::wren(), lessons);
  CHECK(mark == mark_of(test::wren(), turned));
  Pupil moved = test::wren();
  moved.home = "19 Cooper's Reach";
  CHECK(mark_of(moved, lessons) != mark);
  std::vector<Lesson> with_plan = lessons;
  with_plan.emplace_back().number = 3;
  CHECK(mark_of(test::wren(), with_plan) == mark);  // what is only planned proposes nothing
  with_plan.back().state = LessonState::driven;
  CHECK(mark_of(test::wren(), with_plan) != mark);
}

// Two programs that have read the same lesson: the first to write is right, the second is told.
TEST_CASE("a lesson that somebody else changed meanwhile keeps what they wrote", "[book][mark]") {
  test::ScratchBook at;
  plan_lesson(at.book, "WREN", test::plan_of_two_passes(), {});
  const std::string read = mark_of(lessons_of(at.book, "WREN").at(0));
  const LessonRead as_read{"WREN", 1, read};
  Log first = test::log_of_two_passes();
  first.said = "the first";
  log_lesson(at.book, as_read, first);
  const auto refused = [&](const std::function<void()>& act, const std::string& said) {
    try {
      act();
      FAIL("it was taken");
    } catch (const std::exception& error) {
      CHECK(std::string(error.what()).starts_with(said));
    }
  };
  const std::string logged = "lesson 1 was logged at this moment by somebody else: that log stays";
  refused([&] { log_lesson(at.book, as_read, test::log_of_two_passes()); }, logged);
  refused([&] { drop_lesson(at.book, as_read); }, logged);
  refused([&] { replan_lesson(at.book, as_read, {test::plan_of_two_passes(), {}}); }, logged);
  CHECK(lessons_of(at.book, "WREN").at(0).log.said == "the first");
  Plan later = test::plan_of_two_passes();
  later.start = later.start.plus_seconds(7200);
  plan_lesson(at.book, "WREN", later, {});
  refused([&] { plan_lesson(at.book, "WREN", later, {}); },
          "lesson 2 was planned for this start at this moment by somebody else");
  const std::string planned = mark_of(lessons_of(at.book, "WREN").at(1));
  later.start = later.start.plus_seconds(600);
  replan_lesson(at.book, {"WREN", 2, planned}, {later, {}});
  refused(
      [&] {
        log_lesson(at.book, {"WREN", 2, planned}, test::log_of_two_passes());
      },
      "lesson 2 was planned anew, moved or taken out at this moment by somebody else");
  CHECK(lessons_of(at.book, "WREN").size() == 2);
}

}  // namespace
}  // namespace loopwright::book
