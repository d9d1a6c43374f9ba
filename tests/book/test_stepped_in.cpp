// Which intervention is meant. That pedals are stronger than the wheel and that stronger than words: common practice, no
// source.
#include <catch2/catch.hpp>

#include "book/sample.hpp"
#include "loopwright/book/stepped_in.hpp"

namespace loopwright::book {
namespace {

using road::Kind;
using road::Movement;

constexpr Practice right{Kind::roundabout, Movement::right};
constexpr Practice zebra{Kind::zebra, Movement::none};

Lesson driven(int number, std::vector<LessonIntervention> interventions) {
  Lesson lesson;
  lesson.number = number;
  lesson.state = LessonState::driven;
  lesson.plan.start = {1795878000 + number * 86400, 0};
  lesson.log.interventions = std::move(interventions);
  return lesson;
}

LessonPass pass_at(const Practice& what, const std::string& place, std::optional<int> level) {
  return {what, 3, place, true, level};
}

TEST_CASE("the latest lesson with an intervention, and its strongest", "[book][stepped_in]") {
  const std::vector<Lesson> lessons{
      driven(1, {{Intervention::pedals, 1, right}}),
      driven(2, {{Intervention::words, 3, right}, {Intervention::wheel, 1, zebra}}), driven(3, {}),
      driven(4, {{Intervention::pedals, 1, std::nullopt}})};
  const auto last = last_stepped_in(lessons, {});
  REQUIRE(last);
  CHECK(last->lesson == 2);
  CHECK(last->stepped_in.what == zebra);
  CHECK(last_stepped_in(lessons, {1, {}})->stepped_in.how == Intervention::pedals);
  CHECK(last_stepped_in(lessons, {{}, right})->lesson == 2);
  CHECK(last_stepped_in(lessons, {{}, Practice{Kind::roundabout, Movement::none}})->lesson == 2);
  CHECK_FALSE(last_stepped_in(lessons, {{}, Practice{Kind::roundabout, Movement::left}}));
  CHECK_FALSE(last_stepped_in(lessons, {3, {}}));
}

TEST_CASE("a lesson that isn't driven has none", "[book][stepped_in]") {
  std::vector<Lesson> lessons{driven(1, {{Intervention::pedals, 1, right}})};
  lessons[0].state = LessonState::planned;
  CHECK_FALSE(last_stepped_in(lessons, {}));
}

TEST_CASE(
    "its places: driven, of the practice or a special form, each once, the lowest level first",
    "[book][stepped_in]") {
  const Practice large{Kind::multi_lane_roundabout, Movement::right};
  Lesson lesson = driven(1, {{Intervention::pedals, 2, right}});
  LessonPass not_driven = pass_at(right, "way/9", 1);
  not_driven.driven = false;
  lesson.log.passes = {pass_at(right, "way/1", {}),
                       pass_at(right, "way/2", 4),
                       pass_at(large, "way/3", 2),
                       pass_at(right, "way/2", 4),
                       pass_at(right, "", 1),
                       pass_at(zebra, "node/4", 1),
                       not_driven,
                       pass_at({Kind::roundabout, Movement::left}, "way/5", 1)};
  const auto last = last_stepped_in({&lesson, 1}, {});
  REQUIRE(last);
  REQUIRE(last->passes.size() == 3);
  CHECK(last->passes[0].place == "way/3");
  CHECK(last->passes[1].place == "way/2");
  CHECK(last->passes[2].place == "way/1");
}

}  // namespace
}  // namespace loopwright::book
