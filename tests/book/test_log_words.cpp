#include <algorithm>
#include <catch2/catch.hpp>

#include "book/sample.hpp"
#include "loopwright/book/log_words.hpp"
#include "loopwright/book/mock_test.hpp"
#include "support/error_text.hpp"

namespace loopwright::book {
namespace {

using road::Kind;
using road::Movement;

std::vector<LessonPass> planned() {
  return {{{Kind::roundabout, Movement::right}, 3, "way/1"},
          {{Kind::multi_lane_roundabout, Movement::right}, 4, "way/2"},
          {{Kind::roundabout, Movement::left}, 3, "way/1"},
          {{Kind::zebra}, 2, "node/3"},
          {{Kind::zebra}, 2, "node/4"}};
}

Log log_of(std::string_view text) {
  return filled(planned(), read_log(text), *find_scheme("car-27"), {2026, 11, 28});
}

std::vector<int> levels_of(const Log& log) {
  std::vector<int> levels;
  for (const LessonPass& pass : log.passes)
    levels.push_back(pass.driven ? pass.level.value_or(0) : -1);
  return levels;
}

TEST_CASE("with nothing said all that was planned is driven, without a level", "[book][log]") {
  const Log log = log_of("");
  CHECK(levels_of(log) == std::vector<int>{0, 0, 0, 0, 0});
  CHECK(log.observations.empty());
}

TEST_CASE("only exceptions are said, and the rest in a word", "[book][log]") {
  const Log log = log_of("roundabout right 2 pedals; rest 4");
  CHECK(levels_of(log) ==
        std::vector<int>{2, 2, 4, 4, 4});  // the two-lane one is a roundabout, too
  REQUIRE(log.interventions.size() == 1);
  CHECK(log.interventions[0] == LessonIntervention{Intervention::pedals, 1,
                                                   Practice{Kind::roundabout, Movement::right},
                                                   ""});
  CHECK(log.observations ==
        std::vector<Observation>{{"pedestrian-crossings", {2026, 11, 28}, 4, false},
                                 {"roundabouts", {2026, 11, 28}, 2, false}});
}

TEST_CASE("what is said more closely counts", "[book][log]") {
  CHECK(levels_of(log_of("roundabout 3; roundabout right 2; multi-lane-roundabout 1; rest 5")) ==
        std::vector<int>{2, 1, 3, 5, 5});
}

TEST_CASE("a practice has its parts in any order", "[book][log]") {
  const Log log =
      log_of("roundabout right wheel x2 fault lane-discipline serious prompted 3: cut the corner");
  CHECK(log.passes[0].level == 3);
  CHECK(log.passes[0].help == Help::prompted);
  CHECK(log.interventions.at(0).count == 2);
  CHECK(log.interventions.at(0).why == "cut the corner");
  CHECK(log.faults.at(0) == LessonFault{"lane-discipline", Grade::serious, 1,
                                        Practice{Kind::roundabout, Movement::right}});
}

TEST_CASE("what wasn't driven isn't, and what was besides the plan is added", "[book][log]") {
  const Log log = log_of("not roundabout left; zebra x1 4; emerge left x3 3; parallel-park 2");
  CHECK(levels_of(log) == std::vector<int>{0, 0, -1, 4, -1, 3, 3, 3, 2});
  CHECK(log.passes[5].place.empty());
  CHECK(log_of("zebra x3").passes.size() == 6);
}

TEST_CASE("all else that a lesson is told by", "[book][log]") {
  const Log log = log_of(
      "# from the sheet\n"
      "minutes 52; home 90\n"
      "light dusk; weather dull-wet; traffic light\n"
      "skill mirrors 4; fault mirrors-direction x2; words x3: too many\n"
      "mock 4 1 0\n"
      "said: the big ones, they scare me\n"
      "remark: shorter brief\n"
      "goal: roundabouts right\ngoal: mirrors\nreached: moving off\n");
  CHECK(log.minutes == 52);
  CHECK(log.private_minutes == 90);
  CHECK(log.conditions == Conditions{"dusk", "dull-wet", "light"});
  CHECK(log.observations.at(0) == Observation{"mirrors", {2026, 11, 28}, 4, true});
  CHECK(log.faults.at(0) == LessonFault{"mirrors-direction", Grade::driving, 2, std::nullopt});
  CHECK(log.interventions.at(0) ==
        LessonIntervention{Intervention::words, 3, std::nullopt, "too many"});
  CHECK(log.mock == MockTest{{2026, 11, 28}, {4, 1, 0}});
  CHECK(log.said == "the big ones, they scare me");
  CHECK(log.goals == std::vector<std::string>{"roundabouts right", "mirrors"});
  CHECK(log.reached == std::vector<std::string>{"moving off"});
}

// gov.uk, "Understanding your driving test result": 15 driving faults are passed, 16 are not, nor one serious or
// dangerous.
TEST_CASE("a mock test without figures has the faults that are said of the lesson", "[book][log]") {
  const Log log =
      log_of("fault mirrors-direction x14; roundabout right 3 fault lane-discipline; mock; rest 4");
  REQUIRE(log.mock);
  CHECK(log.mock->faults == Faults{15, 0, 0});
  CHECK(log.mock->day == Date{2026, 11, 28});
  CHECK(is_passed(log.mock->faults, log.mock->day));
  const auto passes = [](std::string_view text) {
    const Log of = log_of(text);
    return is_passed(of.mock->faults, of.mock->day);
  };
  CHECK_FALSE(passes("mock; fault mirrors-direction x14; fault clutch x2"));
  CHECK_FALSE(passes("mock; fault clutch serious"));
  CHECK_FALSE(passes("mock; fault clutch dangerous"));
  CHECK(passes("mock"));
  CHECK(log_of("mock 3 0 0; fault clutch").mock->faults == Faults{3, 0, 0});
}

TEST_CASE("a lesson that wasn't planned as a mock test is one only when that is said",
          "[book][log]") {
  Plan plan = test::plan_of_two_passes();
  plan.wish = "want zebra=1\n";
  const auto said = [&](std::string_view text) {
    return test::error_text([&] { need_mock_meant(read_log(text), plan); });
  };
  CHECK(said("mock") ==
        "'mock': this lesson wasn't planned as a mock test; say 'mock unplanned' if it was one all "
        "the same");
  CHECK(said("mock unplanned 4 0 0").empty());
  CHECK(said("rest 4").empty());
  plan.wish = std::string(mock_plan_line) + plan.wish;
  CHECK(said("mock").empty());
}

TEST_CASE("only a goal that is open can be reached", "[book][log]") {
  using Goals = std::vector<std::string>;
  const auto said = [](std::string_view text, const Goals& open) {
    return test::error_text([&] { need_open_goals(read_log(text), open); });
  };
  const Goals two{"clutch smooth", "mirrors"};
  CHECK(said("reached: mirrors", two).empty());
  CHECK(said("goal: parking; reached: parking", {}).empty());
  CHECK(said("rest 4", {}).empty());
  CHECK(said("reached: Mirrors", two) ==
        "'reached: Mirrors': there is no such goal; open: 'clutch smooth', 'mirrors'");
  CHECK(said("reached: mirrors", {}) == "'reached: mirrors': there is no such goal; none is open");
}

TEST_CASE("marks of a sheet from before the lesson was planned again are refused", "[book][log]") {
  Plan plan = test::plan_of_two_passes();
  plan.loop_file = "at ten";
  const std::string old = sheet_mark(plan);
  const auto said = [&](const std::string& text) {
    return test::error_text([&] { need_same_sheet(read_log(text), plan); });
  };
  CHECK(old.size() == 2);
  CHECK(said("sheet " + old).empty());
  plan.loop_file = "at ten past ten";
  REQUIRE(sheet_mark(plan) != old);
  CHECK(said("sheet " + old) ==
        "'sheet " + old +
            "': the lesson was planned again since that sheet was printed, its sheet is " +
            sheet_mark(plan) + " now; print it and say what was driven by it");
  CHECK(said("rest 4").empty());
  plan.loop_file.clear();
  CHECK(sheet_mark(plan).empty());
  CHECK(said("sheet KD") == "'sheet KD': this lesson has no sheet any more");
  CHECK(said("sheet K") ==
        "'sheet K': behind 'sheet' stand the two letters printed on it, such as 'sheet KD'");
}

TEST_CASE("a skill that was said isn't told by its passes as well", "[book][log]") {
  const Log log = log_of("skill roundabouts 3; rest 5");
  CHECK(std::count_if(log.observations.begin(), log.observations.end(),
                      [](const Observation& one) { return one.skill == "roundabouts"; }) == 1);
  CHECK(log.observations.at(0).level == 3);
}

TEST_CASE("a lesson that didn't happen is said in two words", "[book][log]") {
  CHECK(read_log("not driven").not_driven);
  CHECK_FALSE(read_log("not zebra").not_driven);
  CHECK(read_log("sheet KD; not driven").not_driven);
  for (const char* text : {"mock; not driven", "not driven; remark: rain", "rest 4\nnot driven"})
    CHECK(test::error_text([&] { read_log(text); }) ==
          "'not driven': it is said alone, and nothing else of that lesson is kept; leave out the "
          "rest, or say 'not' of each kind that wasn't driven");
}

TEST_CASE("a clause that can't be meant is told with what it takes", "[book][log]") {
  const auto said = [](std::string_view text) { return test::error_text([&] { log_of(text); }); };
  CHECK(said("roundabuot 3") ==
        "'roundabuot 3': begins with no kind of practice, nor with rest, not, skill, fault, words, "
        "wheel, pedals, "
        "minutes, home, light, weather, traffic, mock, sheet, seen, said:, remark:, goal: or "
        "reached:");
  CHECK(said("zebra 4 2") == "'zebra 4 2': this was said before");
  CHECK(said("zebra x2 4 x3") == "'zebra x2 4 x3': this was said before");
  CHECK(said("zebra alone talked") == "'zebra alone talked': this was said before");
  CHECK(said("roundabout right 6") ==
        "'roundabout right 6': a level is a whole number from 1 to 5");
  CHECK(said("roundabout good") ==
        "'roundabout good': 'good' is no level (1 to 5), help (talked, guided, prompted, alone), "
        "words, wheel, pedals "
        "or fault");
  CHECK(said("zebra right 2") == "'zebra right 2': zebra has no movement 'right'");
  CHECK(said("rest 4; rest 3") == "'rest 3': this was said before");
  CHECK(said("roundabout 3; roundabout 4") == "'roundabout 4': this was said before");
  CHECK(said("weather nice") ==
        "'weather nice': weather is one of bright-dry, bright-wet, raining, showers, fog, "
        "dull-dry, dull-wet, snow, "
        "ice, wind, other");
  CHECK(said("fault driving") ==
        "'fault driving': behind 'fault' stands a heading of the marking sheet, such as "
        "junction-observation "
        "('loopwright lesson log --help' lists them)");
  CHECK(said("not signals") == "'not signals': there is none in the plan");
  CHECK(said("not") ==
        "'not': behind 'not' stands what wasn't driven, such as 'not zebra', or 'driven'");
  CHECK(said("skill knitting 3")
            .starts_with("'skill knitting': the driver's record, 27 skills has legal-"));
  CHECK(said("rest") == "'rest': a level is a whole number from 1 to 5");
  CHECK(said("rest 4 5") == "'rest 4 5': '5' has no meaning there");
  CHECK(said("said:") == "'said:': behind the colon stands what was said");
  CHECK(said("mock 3") ==
        "'mock 3': each of driving, serious and dangerous faults is a whole number from 0 to 99");
  CHECK(said("zebra x0") == "'zebra x0': a count is x1 to x99");
}

TEST_CASE("what steers a terminal or is no text is refused, a tab parts words", "[book][log]") {
  for (const std::string bad : {"said: \x1b[31mwell", "remark: a\x07", "words: \xff late"})
    CHECK_THROWS_WITH(read_log(bad), Catch::Matchers::EndsWith(
                                         "holds a sign that can't be printed; leave it out"));
  CHECK(read_log("rest\t4").rest == 4);
  CHECK(read_log("said: größer wäre schöner").log.said == "größer wäre schöner");
}

TEST_CASE("the length of a text is counted in letters, not in bytes", "[book][log]") {
  std::string text = "said: ";
  for (int n = 0; n < 1000; ++n) text += "ö";
  CHECK_NOTHROW(read_log(text));
  CHECK_THROWS_WITH(read_log(text + "ö"), Catch::Matchers::EndsWith("is longer than 1000 letters"));
}

}  // namespace
}  // namespace loopwright::book
