#include <catch2/catch.hpp>

#include "book/sample.hpp"
#include "loopwright/book/progress.hpp"

namespace loopwright::book {
namespace {

constexpr std::int64_t day_s = 24 * 3600;

const Scheme& scheme() {
  return *find_scheme("car-27");
}

Lesson driven(int days_later, Log log) {
  Plan plan = test::plan_of_two_passes();
  plan.start = plan.start.plus_seconds(days_later * day_s);
  return {1, LessonState::driven, plan, std::move(log)};
}

Log log_at(std::vector<int> levels) {
  Log log;
  for (const int level : levels)
    log.passes.push_back({test::right_at_roundabout(), 3, "", true, level});
  return log;
}

const SkillLine& line_of(const std::vector<SkillLine>& lines, std::string_view skill) {
  for (const SkillLine& line : lines)
    if (line.skill->code == skill) return line;
  FAIL("no such skill");
  return lines.front();
}

TEST_CASE("without lessons every skill is there and none has a level", "[book][progress]") {
  const auto lines = skill_lines(scheme(), {});
  CHECK(lines.size() == 27);
  for (const SkillLine& line : lines) CHECK(line.level() == 0);
  CHECK(practice_lines({}).empty());
  CHECK(hours_of({}).lessons == 0);
}

TEST_CASE("of several passes the lower middle one is the level of the day", "[book][progress]") {
  CHECK(lower_middle({3}) == 3);
  CHECK(lower_middle({4, 2}) == 2);
  CHECK(lower_middle({5, 2, 4}) == 4);
  CHECK(lower_middle({1, 5, 5, 5}) == 5);
}

TEST_CASE("passes show the level of their skill, and what is said counts before it",
          "[book][progress]") {
  const Log log = log_at({2, 4, 4});
  const auto shown = observed(scheme(), {2026, 11, 28}, log.passes, {});
  REQUIRE(shown.size() == 1);
  CHECK(shown[0] == Observation{"roundabouts", {2026, 11, 28}, 4, false});
  const std::vector<Observation> said{{"roundabouts", {2026, 11, 28}, 3, true}};
  CHECK(observed(scheme(), {2026, 11, 28}, log.passes, said).empty());
}

TEST_CASE("passes that weren't driven, or without a level, show nothing", "[book][progress]") {
  Log log = log_at({4, 4});
  log.passes[0].driven = false;
  log.passes[1].level.reset();
  CHECK(observed(scheme(), {2026, 11, 28}, log.passes, {}).empty());
  CHECK(practice_lines(std::vector{driven(0, log)}).at(0).passes == 1);
}

// Driver's record of gov.uk: levels go up and down.
TEST_CASE("a skill's line goes down where it went down", "[book][progress]") {
  Log first, second, third;
  first.observations = {{"mirrors", {2026, 11, 28}, 3, true}};
  second.observations = {{"mirrors", {2026, 12, 5}, 4, true}};
  third.observations = {{"mirrors", {2026, 12, 12}, 2, true}};
  const std::vector lessons{driven(14, third), driven(0, first), driven(7, second)};
  const auto lines = skill_lines(scheme(), lessons);
  const SkillLine& mirrors = line_of(lines, "mirrors");
  CHECK(mirrors.seen ==
        std::vector<Seen>{{{2026, 11, 28}, 3}, {{2026, 12, 5}, 4}, {{2026, 12, 12}, 2}});
  CHECK(mirrors.level() == 2);
}

TEST_CASE("a practice is told by its last day and by all its passes", "[book][progress]") {
  Log last = log_at({2, 2, 4});
  last.interventions = {{Intervention::pedals, 2, test::right_at_roundabout(), ""}};
  const auto lines = practice_lines(std::vector{driven(0, log_at({4, 4})), driven(7, last)});
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].passes == 5);
  CHECK(lines[0].last_passes == 3);
  CHECK(lines[0].last == Date{2026, 12, 5});
  CHECK(lines[0].level() == 2);
  CHECK(lines[0].interventions == 2);
}

TEST_CASE("what is only planned counts for nothing", "[book][progress]") {
  Lesson planned = driven(0, {});
  planned.state = LessonState::planned;
  CHECK(hours_of(std::vector{planned}).lessons == 0);
  CHECK(exposure_of(std::vector{planned}).empty());
}

TEST_CASE("hours and roads add up, by what they were driven in", "[book][progress]") {
  Log dusk = test::log_of_two_passes();
  const std::vector lessons{driven(0, dusk), driven(7, dusk), driven(8, {})};
  CHECK(hours_of(lessons).lesson_minutes == 180);
  CHECK(hours_of(lessons).private_minutes == 180);
  const auto exposure = exposure_of(lessons);
  REQUIRE(exposure.size() == 4);
  CHECK((exposure[1].road == "quiet" && exposure[1].conditions.light == "dusk" &&
         exposure[1].minutes == 11));
}

TEST_CASE("a goal is open until it is reached", "[book][progress]") {
  Log first, second;
  first.goals = {"roundabouts right", "mirrors"};
  second.reached = {"mirrors"};
  CHECK(open_goals(std::vector{driven(7, second), driven(0, first)}) ==
        std::vector<std::string>{"roundabouts right"});
  std::vector both{driven(0, first), driven(7, second)};
  both[0].number = 1, both[1].number = 2;
  CHECK(open_goals(both, 2) == first.goals);
  CHECK(open_goals(both, 1).empty());
}

}  // namespace
}  // namespace loopwright::book
