// What a recorded drive says of a lesson, in the book.
#include <catch2/catch.hpp>

#include "book/sample.hpp"
#include "loopwright/book/log_words.hpp"
#include "loopwright/book/traced.hpp"

namespace loopwright::book {
namespace {

using test::plan_of_two_passes;
using test::right_at_roundabout;
using test::ScratchBook;

const LessonPass ring{right_at_roundabout(), 3, "way/9100000000361"};
const LessonPass zebra{{road::Kind::zebra}, 2, "node/5"};

Log log_by(const std::vector<LessonPass>& passes, std::string_view line = "") {
  return filled(passes, line.empty() ? Said{} : read_log(line), *find_scheme("car-27"),
                {2026, 11, 28});
}

TEST_CASE("a trace says of each planned pass whether it was driven", "[book][trace]") {
  const auto passes = traced_passes({ring, zebra, ring}, {zebra, ring});
  REQUIRE(passes.size() == 3);
  CHECK(passes[0].driven);
  CHECK(passes[1].driven);
  CHECK_FALSE(passes[2].driven);  // only once
  for (const LessonPass& pass : passes) CHECK(pass.traced);
}

TEST_CASE("what was driven besides the plan comes behind it", "[book][trace]") {
  const LessonPass elsewhere{{road::Kind::zebra}, 2, "node/6"};
  const auto passes = traced_passes({ring}, {elsewhere, ring});
  REQUIRE(passes.size() == 2);
  CHECK(passes[1].place == "node/6");
  CHECK(passes[1].driven);
}

TEST_CASE("a line laid over a trace speaks of what was driven alone", "[book][trace]") {
  const auto passes = traced_passes({ring, zebra}, {zebra});
  const Log log = log_by(passes, "roundabout right 2; rest 4");
  // The instructor's word adds the roundabout that no fix saw.
  REQUIRE(log.passes.size() == 3);
  CHECK_FALSE(log.passes[0].driven);
  CHECK_FALSE(log.passes[0].level.has_value());
  CHECK(log.passes[1].level == 4);
  CHECK(log.passes[2].what == right_at_roundabout());
  CHECK(log.passes[2].level == 2);
  CHECK_FALSE(log_by(passes, "not roundabout right").passes[0].driven);
  CHECK_FALSE(log_by(passes, "not zebra").passes[1].driven);
}

TEST_CASE("a later log keeps what the trace said", "[book][trace]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {{7, 1, 2}});
  const Traced traced{
      {1795878120, 0},
      2640,
      300,
      15640,
      "",
      {{road::Control::signals, 3, 90, 120.5}, {road::Control::none, 9, 1000, 1100}}};
  Plan driven = plan_of_two_passes();
  driven.roads = {{"town", 44}};
  driven.limits = {{40, SpeedUnit::mph, 44}};
  const auto passes = traced_passes(driven.passes, {zebra});
  CHECK(log_traced(at.book, {"WREN", 1}, {driven, log_by(passes), traced, {{8, 3, 4}}}) == 1);
  Lesson lesson = lesson_of(at.book, "WREN", 1);
  CHECK(lesson.state == LessonState::driven);
  CHECK(lesson.log.passes == passes);
  CHECK(lesson.plan.loop_file == plan_of_two_passes().loop_file);  // until the next is logged
  REQUIRE(lesson.plan.roads.size() == 1);
  CHECK(lesson.plan.roads[0].minutes == 44);
  CHECK(lesson.plan.limits == driven.limits);
  // The streets really driven count, not the planned ones.
  CHECK(street_use(at.book, {{2026, 11, 28}}) == std::vector<wish::StreetUse>{{8, 1, 1}});
  log_lesson(at.book, {"WREN", 1}, log_by(lesson.log.passes, "rest 4"));
  lesson = lesson_of(at.book, "WREN", 1);
  CHECK_FALSE(lesson.log.passes[0].driven);
  CHECK(lesson.log.passes[1].level == 4);
  const auto traces = traces_of(at.book, "WREN");
  REQUIRE(traces.size() == 1);
  CHECK(traces[0].number == 1);
  CHECK(traces[0].traced.times.size() == 2);
  CHECK(traces[0].traced.times[0] == traced.times[0]);
  CHECK(traces[0].traced.seconds == 2640);
}

TEST_CASE("a traced lesson that wasn't planned gets a number", "[book][trace]") {
  ScratchBook at;
  Plan plan;
  plan.start = {1795878000, 0};
  CHECK(log_traced(at.book, {"WREN", 0}, {plan, log_by(traced_passes({}, {zebra})), {}, {}}) == 1);
  CHECK(lesson_of(at.book, "WREN", 1).log.passes.size() == 1);
}

}  // namespace
}  // namespace loopwright::book
