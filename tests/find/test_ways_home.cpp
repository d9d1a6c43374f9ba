// The short easy ways home from a loop: they lead from it to its end, by what a learner may drive, and
// are no harder than the level where there is such a way.
#include <catch2/catch.hpp>

#include <algorithm>

#include "find/crossing_lesson.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;

wish::Answer lesson(int level, int minutes = 20) {
  wish::Wish wish = crossing_wish(town(), minutes, {"roundabout=2"});
  wish.level = level;
  return answer_in(town(), wish);
}

TEST_CASE("from places along a loop there is a way to its end", "[find][ways-home]") {
  const auto answer = lesson(3);
  const wish::Loop& loop = answer.loops.at(0);
  REQUIRE(loop.ways_home.size() > 2);
  for (const wish::WayHome& way : loop.ways_home) {
    const wish::LoopStretch& left = loop.stretches.at(way.from_stretch);
    REQUIRE_FALSE(way.stretches.empty());
    CHECK(way.stretches.front().from == left.to);
    CHECK(way.stretches.back().way == loop.stretches.back().way);
    CHECK(way.seconds > 0);
    CHECK(way.stretches.front().arrive_s.likely >= left.arrive_s.likely);
  }
  CHECK(false_claim_in(town(), answer) == "");
}

TEST_CASE("a way home starts from every place to pull up but one at the door",
          "[find][ways-home]") {
  const auto answer = lesson(3);
  const wish::Loop& loop = answer.loops.at(0);
  for (const wish::PullUp& place : loop.pull_ups) {
    if (place.stretch + 1 == loop.stretches.size()) continue;
    CHECK(std::ranges::count(loop.ways_home, place.stretch, &wish::WayHome::from_stretch) == 1);
  }
}

TEST_CASE("a way home is no longer than the rest of an easy loop", "[find][ways-home]") {
  const auto answer = lesson(5);
  const wish::Loop& loop = answer.loops.at(0);
  for (const wish::WayHome& way : loop.ways_home) {
    const double left_s = loop.stretches[way.from_stretch + 1].arrive_s.likely;
    CHECK(way.seconds <= loop.seconds.likely + loop.stop_seconds - left_s + 60);
  }
}

TEST_CASE("ways home are easy for who is a beginner, or say how hard they are",
          "[find][ways-home]") {
  const auto beginner = lesson(2), good = lesson(5);
  const auto easy = [](const wish::Answer& answer) {
    const auto& ways = answer.loops.at(0).ways_home;
    return std::ranges::count_if(ways, [&](const wish::WayHome& way) {
      return way.hardest <= wish::easy_hardness(answer.wish);
    });
  };
  CHECK(easy(good) == static_cast<std::ptrdiff_t>(good.loops.at(0).ways_home.size()));
  CHECK(easy(beginner) > 0);
  CHECK(false_claim_in(town(), beginner) == "");
  CHECK(false_claim_in(town(), good) == "");
}

TEST_CASE("a street shut by the clock is on no way home", "[find][ways-home]") {
  std::string drawing(crossing_streets);
  const std::string way = "w4 AE    highway=residential name=Signal_Terrace";
  drawing.insert(drawing.find(way) + way.size(),
                 " motor_vehicle:conditional=\"no @ (Sa 15:10-18:00)\"");
  const BuiltTown timed = built_town(draw_town(drawing, 100), "GB-ENG");
  const auto answer = answer_in(timed, crossing_wish(timed, 20, {"roundabout=1"}));
  for (const wish::WayHome& home : answer.loops.at(0).ways_home)
    CHECK(std::ranges::count(home.stretches, 4, &wish::LoopStretch::way) == 0);
  CHECK(false_claim_in(timed, answer) == "");
}

// --- lies -------------------------------------------------------------------------------------

template <class Lie>
std::string told_of(Lie lie) {
  wish::Answer answer = lesson(3);
  auto& ways = answer.loops.at(0).ways_home;
  const auto longest = std::ranges::max_element(
      ways, {}, [](const wish::WayHome& way) { return way.stretches.size(); });
  REQUIRE(longest->stretches.size() > 2);
  lie(*longest);
  return false_claim_in(town(), answer);
}

TEST_CASE("a way home with a gap, to another end or from elsewhere is told", "[proof][ways-home]") {
  CHECK_THAT(told_of([](wish::WayHome& way) { way.stretches.erase(way.stretches.begin() + 1); }),
             Contains("way home from stretch") && Contains("begins at node"));
  CHECK_THAT(told_of([](wish::WayHome& way) { way.stretches.pop_back(); }),
             Contains("it doesn't end where the loop ends"));
  CHECK_THAT(told_of([](wish::WayHome& way) { way.from_stretch += 1; }),
             Contains("way home from stretch"));
}

TEST_CASE("a wrong time or hardness of a way home is told", "[proof][ways-home]") {
  CHECK_THAT(told_of([](wish::WayHome& way) { way.seconds -= 30; }),
             Contains("time: the file says"));
  CHECK_THAT(told_of([](wish::WayHome& way) { way.stretches[1].arrive_s.likely += 30; }),
             Contains("likely time: the file says"));
  CHECK_THAT(told_of([](wish::WayHome& way) { way.hardest = way.hardest == 0 ? 1 : 0; }),
             Contains("hardest: the file says"));
  CHECK_THAT(told_of([](wish::WayHome& way) { way.stretches[1].metres += 30; }),
             Contains("length: the file says"));
}

}  // namespace
}  // namespace loopwright::test
