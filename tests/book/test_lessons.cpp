#include <catch2/catch.hpp>

#include "book/sample.hpp"
#include "loopwright/book/seen.hpp"
#include "loopwright/book/streets.hpp"
#include "support/error_text.hpp"

namespace loopwright::book {
namespace {

using test::error_text;
using test::log_of_two_passes;
using test::plan_of_two_passes;
using test::ScratchBook;

TEST_CASE("a pupil comes back as written, whatever capitals the code is asked by",
          "[book][pupils]") {
  ScratchBook at;
  const Pupil wren = pupil_of(at.book, "wren");
  CHECK(wren.code == "WREN");
  CHECK(wren.home == "4 Lantern Row");
  CHECK(wren.test_day == Date{2027, 2, 3});
  CHECK(wren.my_your);
  CHECK(wren.ticks == test::wren().ticks);
  CHECK(wren.avoids == test::wren().avoids);
}

TEST_CASE("a pupil's ticks, test and places change, the code doesn't", "[book][pupils]") {
  ScratchBook at;
  Pupil changed = test::wren();
  changed.ticks[Tick::theory_passed] = {2026, 10, 2};
  changed.test_day.reset();
  changed.avoids.clear();
  change_pupil(at.book, changed);
  CHECK(pupil_of(at.book, "WREN").ticks.size() == 2);
  CHECK_FALSE(pupil_of(at.book, "WREN").test_day);
  CHECK(pupil_of(at.book, "WREN").avoids.empty());
}

TEST_CASE("a code is taken once, and one that isn't there is told", "[book][pupils]") {
  ScratchBook at;
  Pupil again = test::wren();
  again.code = "Wren";
  CHECK(error_text([&] { add_pupil(at.book, again); }) ==
        "Wren is in the book already; 'loopwright pupil change' changes what is kept");
  CHECK(error_text([&] { pupil_of(at.book, "FINCH"); }) ==
        "there is no pupil FINCH in the book; 'loopwright pupil list' shows who is");
  CHECK(pupils_of(at.book).size() == 1);
}

TEST_CASE("a code is short, and no name with blanks in it", "[book][pupils]") {
  CHECK(is_code("WREN"));
  CHECK(is_code("w-7"));
  CHECK_FALSE(is_code(""));
  CHECK_FALSE(is_code("Jenny Wren"));
  CHECK_FALSE(is_code("ABCDEFGHIJKLM"));
}

TEST_CASE("a plan comes back as written, its loop file only when asked for", "[book][lessons]") {
  ScratchBook at;
  CHECK(plan_lesson(at.book, "WREN", plan_of_two_passes(), {}) == 1);
  const auto lessons = lessons_of(at.book, "WREN");
  REQUIRE(lessons.size() == 1);
  CHECK(lessons[0].state == LessonState::planned);
  CHECK(lessons[0].plan.start == plan_of_two_passes().start);
  CHECK(lessons[0].plan.passes == plan_of_two_passes().passes);
  CHECK(lessons[0].plan.likely_s == 2700.5);
  CHECK(lessons[0].plan.roads.size() == 2);
  CHECK(lessons[0].plan.limits == plan_of_two_passes().limits);
  CHECK(lessons[0].plan.loop_file.empty());
  CHECK(lesson_of(at.book, "WREN", 1).plan.loop_file == plan_of_two_passes().loop_file);
}

TEST_CASE("a log comes back as written", "[book][lessons]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {});
  log_lesson(at.book, {"WREN", 1}, log_of_two_passes());
  const Lesson lesson = lessons_of(at.book, "WREN").at(0);
  const Log expected = log_of_two_passes();
  CHECK(lesson.state == LessonState::driven);
  CHECK(lesson.log.minutes == 52);
  CHECK(lesson.log.passes == expected.passes);
  CHECK(lesson.log.faults == expected.faults);
  CHECK(lesson.log.interventions == expected.interventions);
  CHECK(lesson.log.observations == expected.observations);
  CHECK(lesson.log.mock == expected.mock);
  CHECK(lesson.log.conditions == expected.conditions);
  CHECK(lesson.log.said == expected.said);
  CHECK(lesson.log.remark == expected.remark);
  CHECK(lesson.log.goals == expected.goals);
  CHECK(lesson.log.private_minutes == 90);
}

TEST_CASE("a lesson logged once more holds the later log alone", "[book][lessons]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {});
  log_lesson(at.book, {"WREN", 1}, log_of_two_passes());
  Log shorter;
  shorter.passes = {plan_of_two_passes().passes[1]};
  log_lesson(at.book, {"WREN", 1}, shorter);
  const Lesson lesson = lessons_of(at.book, "WREN").at(0);
  CHECK(lesson.log.passes.size() == 1);
  CHECK(lesson.log.faults.empty());
  CHECK(lesson.log.goals.empty());
  CHECK_FALSE(lesson.log.mock);
}

TEST_CASE("a log is taken back whole, as long as no later one is logged with its drive",
          "[book][lessons]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {{7, 1, 2}});
  Log log = log_of_two_passes();
  log.seen = {{plan_of_two_passes().to_check[0].fact, {2026, 11, 28}, ""}};
  log_lesson(at.book, {"WREN", 1}, log);
  unlog_lesson(at.book, {"WREN", 1}, {});
  const Lesson lesson = lesson_of(at.book, "WREN", 1);
  CHECK(lesson.state == LessonState::planned);
  CHECK(lesson.plan.passes == plan_of_two_passes().passes);
  CHECK(lesson.plan.loop_file == plan_of_two_passes().loop_file);
  CHECK_FALSE(lesson.log.minutes);
  CHECK(lesson.log.faults.empty());
  CHECK(lesson.log.observations.empty());
  CHECK(lesson.log.said.empty());
  CHECK(lesson.log.goals.empty());
  CHECK_FALSE(lesson.log.mock);
  CHECK(seen_facts(at.book).empty());
  CHECK(street_use(at.book, {{2026, 11, 28}}).size() == 1);

  log_lesson(at.book, {"WREN", 1}, log);
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {});
  log_lesson(at.book, {"WREN", 2}, log);
  CHECK(lesson_of(at.book, "WREN", 1).plan.loop_file.empty());
  CHECK_FALSE(lesson_of(at.book, "WREN", 2).plan.loop_file.empty());
}

TEST_CASE("taking a log back leaves what other logs saw, and goals that later lessons reached",
          "[book][lessons]") {
  ScratchBook at;
  const wish::MapFact fact = plan_of_two_passes().to_check[0].fact;
  const wish::MapFact other{"place", "way/7", "no name"};
  Plan later = plan_of_two_passes();
  later.start = later.start.plus_seconds(7200);
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {});
  plan_lesson(at.book, "WREN", later, {});
  Log first = log_of_two_passes(), second = log_of_two_passes();
  first.seen = {{fact, {2026, 11, 28}, ""}, {other, {2026, 11, 28}, ""}};
  first.goals = {"alone", "calm"};
  second.seen = {{fact, {2026, 11, 28}, ""}};
  second.goals.clear();
  second.reached = {"alone"};
  log_lesson(at.book, {"WREN", 1}, first);
  log_lesson(at.book, {"WREN", 2}, second);
  unlog_lesson(at.book, {"WREN", 1}, {});
  // The second log saw the same thing on the same day.
  const SeenFacts seen = seen_facts(at.book);
  REQUIRE(seen.size() == 1);
  CHECK(seen.begin()->second.fact == fact);
  CHECK(lesson_of(at.book, "WREN", 1).log.goals.empty());
  CHECK(lesson_of(at.book, "WREN", 2).log.reached == std::vector<std::string>{"alone"});
  first.goals = {"alone", "slower"};
  log_lesson(at.book, {"WREN", 1}, first);
  CHECK(lesson_of(at.book, "WREN", 1).log.goals == std::vector<std::string>{"alone", "slower"});
  CHECK(lesson_of(at.book, "WREN", 2).log.reached == std::vector<std::string>{"alone"});
}

TEST_CASE("a log that is taken back has the passes of its plan again", "[book][lessons]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {{7, 1, 2}});
  Log log = log_of_two_passes();
  log.passes.push_back({{road::Kind::zebra}, 2, "node/9", true, 3, {}, true});
  log_lesson(at.book, {"WREN", 1}, log);
  Plan again = plan_of_two_passes();
  again.length_minutes = 90;
  unlog_lesson(at.book, {"WREN", 1}, {plan_of_two_passes().passes, {{again, {{8, 1, 2}}}}});
  const Lesson lesson = lesson_of(at.book, "WREN", 1);
  CHECK(lesson.state == LessonState::planned);
  CHECK(lesson.plan.passes == plan_of_two_passes().passes);
  CHECK(lesson.plan.length_minutes == 90);
  CHECK(street_use(at.book, {{2026, 11, 28}}) == std::vector<wish::StreetUse>{{8, 1, 1}});
}

TEST_CASE("a log that wasn't planned here counts no more once it is taken back",
          "[book][lessons]") {
  ScratchBook at;
  Plan plan;
  plan.start = plan_of_two_passes().start;
  const int number = add_driven_lesson(at.book, "WREN", plan, log_of_two_passes());
  unlog_lesson(at.book, {"WREN", number}, {});
  const Lesson lesson = lesson_of(at.book, "WREN", number);
  CHECK(lesson.state == LessonState::not_driven);
  CHECK(lesson.log.observations.empty());
  CHECK(add_driven_lesson(at.book, "WREN", plan, log_of_two_passes()) == number + 1);
}

TEST_CASE("a goal of an earlier lesson is reached in a later one", "[book][lessons]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {});
  log_lesson(at.book, {"WREN", 1}, log_of_two_passes());
  Log later;
  later.reached = {"roundabouts right without pedals"};
  CHECK(add_driven_lesson(at.book, "WREN", plan_of_two_passes(), later) == 2);
  CHECK(lessons_of(at.book, "WREN").at(1).log.reached == later.reached);
}

// Driver's record of gov.uk: a level can go down again.
TEST_CASE("a level that goes down is kept as it was seen", "[book][lessons]") {
  ScratchBook at;
  Log first = log_of_two_passes(), second = log_of_two_passes();
  first.observations = {{"roundabouts", {2026, 11, 21}, 4, true}};
  second.observations = {{"roundabouts", {2026, 11, 28}, 2, true}};
  add_driven_lesson(at.book, "WREN", plan_of_two_passes(), first);
  add_driven_lesson(at.book, "WREN", plan_of_two_passes(), second);
  const auto lessons = lessons_of(at.book, "WREN");
  CHECK(lessons.at(0).log.observations.at(0).level == 4);
  CHECK(lessons.at(1).log.observations.at(0).level == 2);
}

TEST_CASE("a plan can be moved until it is driven", "[book][lessons]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {{7, 1, 2}});
  Plan moved = plan_of_two_passes();
  moved.start = moved.start.plus_seconds(24 * 3600);
  replan_lesson(at.book, {"WREN", 1}, {moved, {{7, 1, 2, 2}}});
  CHECK(lessons_of(at.book, "WREN").size() == 1);
  CHECK(street_use(at.book, {{2026, 11, 28}}).empty());
  CHECK(street_use(at.book, {{2026, 11, 29}}) == std::vector<wish::StreetUse>{{7, 2, 2}});
  log_lesson(at.book, {"WREN", 1}, log_of_two_passes());
  CHECK(error_text([&] {
          replan_lesson(at.book, {"WREN", 1}, {moved, {}});
        }) == "lesson 1 is driven and logged; it can't be planned again");
}

TEST_CASE("a lesson that is logged wasn't left out, unless its log is taken back",
          "[book][lessons]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {});
  log_lesson(at.book, {"WREN", 1}, log_of_two_passes());
  CHECK(error_text([&] {
          drop_lesson(at.book, {"WREN", 1});
        }) == "lesson 1 is driven and logged; take that back first ('loopwright lesson unlog')");
  CHECK(lessons_of(at.book, "WREN").at(0).state == LessonState::driven);
}

TEST_CASE("a lesson that isn't there is told", "[book][lessons]") {
  ScratchBook at;
  CHECK(error_text([&] {
          log_lesson(at.book, {"WREN", 4}, {});
        }) == "WREN has no lesson 4; 'loopwright lesson list WREN' shows them");
}

TEST_CASE("the ledger counts a street by its most driven part, all pupils together",
          "[book][streets]") {
  ScratchBook at;
  Pupil finch = test::wren();
  finch.code = "FINCH";
  add_pupil(at.book, finch);
  plan_lesson(at.book, "WREN", plan_of_two_passes(),
              {{7, 1, 2, 2}, {7, 2, 3, 1}, {9, 4, 5, 1, true}});
  plan_lesson(at.book, "FINCH", plan_of_two_passes(), {{7, 2, 3, 2}});
  CHECK(street_use(at.book, {{2026, 11, 28}}) ==
        std::vector<wish::StreetUse>{{7, 3, 3}, {9, 1, 1}});
  // The 30 days that end with the lesson's.
  CHECK(street_use(at.book, {{2026, 12, 27}}) ==
        std::vector<wish::StreetUse>{{7, 0, 3}, {9, 0, 1}});
  CHECK(street_use(at.book, {{2026, 12, 28}}).empty());
  CHECK(street_use(at.book, {{2026, 11, 27}}).empty());
  // A lesson planned anew doesn't stand in its own way.
  CHECK(street_use(at.book, {{2026, 11, 28}, "WREN", 1}) ==
        std::vector<wish::StreetUse>{{7, 2, 2}});
  const auto totals = most_used(at.book, {2026, 11, 1}, {2026, 11, 30});
  REQUIRE(totals.size() == 2);
  CHECK((totals[0].way == 7 && totals[0].times == 3 && totals[0].lessons == 2));
  drop_lesson(at.book, {"FINCH", 1});
  CHECK(street_use(at.book, {{2026, 11, 28}}).at(0) == wish::StreetUse{7, 2, 2});
}

}  // namespace
}  // namespace loopwright::book
