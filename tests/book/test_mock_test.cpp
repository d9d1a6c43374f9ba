#include <algorithm>
#include <catch2/catch.hpp>

#include "book/sample.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::book {
namespace {

using road::Kind;
using road::Movement;

std::set<Practice> everything() {
  std::set<Practice> there;
  for (const Kind kind : road::all_kinds()) {
    there.insert({kind, Movement::none});
    for (const Movement movement : road::movements_of(kind)) there.insert({kind, movement});
  }
  return there;
}

Lesson parked_with(Kind manoeuvre, int days_before) {
  Lesson lesson;
  lesson.state = LessonState::driven;
  lesson.plan = test::plan_of_two_passes();
  lesson.plan.start = lesson.plan.start.plus_seconds(-24 * 3600 * days_before);
  lesson.log.passes = {{{manoeuvre, Movement::none}, 3, "", true, 3}};
  return lesson;
}

// gov.uk, "Carry out mock driving tests for your pupils": about 40 minutes, a route of about 30; mixed roads.
TEST_CASE("a mock test is about forty minutes, thirty of them driven, on mixed roads",
          "[book][mock]") {
  const MockWish wish = mock_wish({}, everything(), {2026, 12, 1});
  CHECK(wish.driving_minutes == 30);
  CHECK(wish.driving_minutes + wish.stop_minutes >= 40);
  CHECK(wish.driving_minutes + wish.stop_minutes <= 45);
  for (const Kind kind : {Kind::country_road, Kind::dual_carriageway, Kind::multi_lane_roundabout,
                          Kind::one_way, Kind::signals})
    CHECK(std::count(wish.wants.begin(), wish.wants.end(), Practice{kind, Movement::none}) == 1);
}

// DVSA's change of 24 November 2025, by press and trade reports: three stops instead of four.
TEST_CASE("the stops of a mock test are those of its day", "[book][mock]") {
  CHECK(mock_wish({}, everything(), {2025, 11, 23}).stops == 4);
  CHECK(mock_wish({}, everything(), {2025, 11, 24}).stops == 3);
  CHECK(mock_wish({}, everything(), {2026, 12, 1}).independent_minutes == 20);
}

TEST_CASE("only what can be had from the door is in a mock test", "[book][mock]") {
  const MockWish village = mock_wish({}, {{Kind::country_road}}, {2026, 12, 1});
  CHECK(village.wants == std::vector<Practice>{{Kind::country_road, Movement::none}});
  CHECK(village.stops == 0);
  CHECK_FALSE(village.has_manoeuvre);
  CHECK(village.stop_minutes == 0);
}

TEST_CASE("the manoeuvre of a mock test is the one not driven for longest", "[book][mock]") {
  const Date day{2026, 12, 1};
  CHECK(mock_wish({}, everything(), day).manoeuvre == Kind::pull_up_right);
  const std::vector<Lesson> lessons{parked_with(Kind::pull_up_right, 20),
                                    parked_with(Kind::parallel_park, 30),
                                    parked_with(Kind::bay_park, 10)};
  CHECK(mock_wish(lessons, everything(), day).manoeuvre == Kind::parallel_park);
}

TEST_CASE("faults of a mock test are counted by grade, and those that come back are told",
          "[book][mock]") {
  const std::vector<LessonFault> faults{
      {"mirrors-direction", Grade::driving, 2},
      {"junction-observation", Grade::driving, 1},
      {"junction-observation", Grade::serious, 1, test::right_at_roundabout()},
      {"junction-observation", Grade::driving, 1},
      {"clutch", Grade::dangerous, 1}};
  CHECK(counted(faults) == Faults{4, 1, 1});
  const auto again = repeated(faults);
  REQUIRE(again.size() == 2);
  CHECK(again[0].heading->code == "junction-observation");
  CHECK(again[0].count == 3);
  CHECK(again[1].heading->code == "mirrors-direction");
  CHECK(counted({}) == Faults{});
  CHECK(repeated({}).empty());
}

}  // namespace
}  // namespace loopwright::book
