// Where one may pull up after what was hard, and until when one may stay. Source of the places: Highway
// Code rules 240 and 243, as the area has them; times are pace's.
#include <catch2/catch.hpp>

#include <algorithm>

#include "find/crossing_lesson.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;

std::size_t hard_passes(const wish::Loop& loop) {
  return static_cast<std::size_t>(std::ranges::count_if(
      loop.passes, [](const wish::Pass& pass) { return pass.hardness >= wish::hard_pass; }));
}

TEST_CASE("after every hard pass the next place to pull up is told, or that there is none",
          "[find][pull-ups]") {
  const auto answer = answer_in(town(), crossing_wish(town(), 20, {"level-crossing=1"}));
  REQUIRE(answer.loops.size() == 1);
  const wish::Loop& loop = answer.loops[0];
  REQUIRE(hard_passes(loop) > 0);
  CHECK(loop.stops_after.size() == hard_passes(loop));
  CHECK(std::ranges::any_of(loop.stops_after,
                            [](const wish::StopAfter& one) { return one.pull_up.has_value(); }));
  for (const wish::StopAfter& one : loop.stops_after) {
    if (!one.pull_up) continue;
    CHECK(one.seconds <= wish::stop_after_most_s);
    CHECK(loop.pull_ups.at(*one.pull_up).stretch >= wish::end_row(loop.passes[one.pass]));
  }
  CHECK(false_claim_in(town(), answer) == "");
}

TEST_CASE("a place not planned for is offered, and says what to look for", "[find][pull-ups]") {
  const auto answer = answer_in(town(), crossing_wish(town(), 20, {"level-crossing=1"}));
  const wish::PullUp& place = answer.loops.at(0).pull_ups.at(0);
  CHECK(place.purpose == "");
  CHECK(place.seconds == 0);
  CHECK(place.left);
  CHECK_THAT(place.why, Contains("no ban mapped"));
  CHECK_THAT(place.check, Contains("check lines, signs and drives"));
}

TEST_CASE("who leaves at the last moment is home when the minutes end", "[find][pull-ups]") {
  const auto answer = answer_in(town(), crossing_wish(town(), 20, {"level-crossing=1"}));
  const wish::Loop& loop = answer.loops.at(0);
  const double slack_s = 20 * 60 - loop.seconds.likely - loop.stop_seconds;
  for (const wish::PullUp& place : loop.pull_ups) {
    const double here_s = loop.stretches[place.stretch].arrive_s.likely;
    CHECK(place.leave_by_s >= here_s + slack_s - 0.01);
    CHECK(place.leave_by_s <= 20 * 60);
  }
}

TEST_CASE("where every kerb is forbidden no place is offered", "[find][pull-ups]") {
  const BuiltTown shut = crossing_town("parking:both:restriction=no_stopping");
  const auto answer = answer_in(shut, crossing_wish(shut, 20, {"level-crossing=1"}));
  const wish::Loop& loop = answer.loops.at(0);
  REQUIRE(hard_passes(loop) > 0);
  CHECK(loop.pull_ups.empty());
  CHECK(std::ranges::none_of(loop.stops_after,
                             [](const wish::StopAfter& one) { return one.pull_up.has_value(); }));
  CHECK_FALSE(answer.shortfall);
  CHECK(false_claim_in(shut, answer) == "");
}

TEST_CASE("a kerb that is forbidden by the hour is offered outside its hours alone",
          "[find][pull-ups]") {
  const BuiltTown timed =
      crossing_town("parking:both:restriction:conditional=\"no_parking @ (Sa 08:00-18:00)\"");
  wish::Wish wish = crossing_wish(timed, 20, {"level-crossing=1"});
  const auto by_day = answer_in(timed, wish);
  CHECK(by_day.loops.at(0).pull_ups.empty());
  CHECK(false_claim_in(timed, by_day) == "");
  wish.start = wish.start.plus_seconds(4 * 3600);
  const auto by_night = answer_in(timed, wish);
  CHECK_FALSE(by_night.loops.at(0).pull_ups.empty());
  CHECK(false_claim_in(timed, by_night) == "");
}

TEST_CASE("a drive of one's own tells places too, without a moment to leave by",
          "[find][pull-ups]") {
  const road::Roads roads = town().roads();
  wish::Wish wish = crossing_wish(town(), 20, {});
  wish.minutes.reset();
  wish.through = {roads.nodes[town().node('H').index()].at};
  const auto answer = answer_in(town(), wish);
  const wish::Loop& loop = answer.loops.at(0);
  CHECK(loop.stops_after.size() == hard_passes(loop));
  for (const wish::PullUp& place : loop.pull_ups) CHECK(place.leave_by_s == 0);
  CHECK_FALSE(loop.ways_home.empty());
  CHECK(false_claim_in(town(), answer) == "");
}

}  // namespace
}  // namespace loopwright::test
