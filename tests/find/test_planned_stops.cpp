// A brief before what is new and a talk near the end: held at places to pull up, inside the minutes.
// Lengths and limits: DEVELOPERS.md, planned stops (common practice, no source).
#include <catch2/catch.hpp>

#include <algorithm>

#include "find/crossing_lesson.hpp"
#include "loopwright/card/card.hpp"
#include "loopwright/wish/resolve.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;
using road::Kind;

wish::Wish wish_with(const BuiltTown& where, wish::PlannedStops stops) {
  wish::Wish wish = crossing_wish(where, 25, {"roundabout=1", "level-crossing=1"});
  wish.stops = std::move(stops);
  return wish;
}

std::vector<wish::PullUp> planned(const wish::Loop& loop, std::string_view purpose) {
  std::vector<wish::PullUp> stops;
  for (const wish::PullUp& place : loop.pull_ups)
    if (place.purpose == purpose) stops.push_back(place);
  return stops;
}

TEST_CASE("without anything asked no stop is planned", "[find][planned-stops]") {
  const auto answer = answer_in(town(), wish_with(town(), {}));
  CHECK(planned(answer.loops.at(0), "brief").empty());
  CHECK(planned(answer.loops.at(0), "talk").empty());
  CHECK(answer.loops.at(0).stop_seconds == 0);
}

TEST_CASE("a brief is held before the first pass of a new kind", "[find][planned-stops]") {
  const auto answer = answer_in(town(), wish_with(town(), {4, 0, {Kind::roundabout}}));
  REQUIRE(answer.loops.size() == 1);
  CHECK_FALSE(answer.shortfall);
  const wish::Loop& loop = answer.loops[0];
  const auto briefs = planned(loop, "brief");
  REQUIRE(briefs.size() == 1);
  const wish::Pass* first = wish::first_pass_of(loop.passes, Kind::roundabout);
  REQUIRE(first != nullptr);
  CHECK(briefs[0].stretch < wish::begin_row(*first));
  CHECK(briefs[0].seconds == 240);
  CHECK(loop.stop_seconds == 240);
  CHECK(false_claim_in(town(), answer) == "");
}

TEST_CASE("what comes behind a planned stop is reached later by it", "[find][planned-stops]") {
  const auto answer = answer_in(town(), wish_with(town(), {6, 0, {Kind::roundabout}}));
  const wish::Loop& loop = answer.loops.at(0);
  const std::size_t at = planned(loop, "brief").at(0).stretch;
  CHECK(loop.stretches[at + 1].arrive_s.likely - loop.stretches[at].arrive_s.likely > 360);
  const double away_s = loop.seconds.likely + loop.stop_seconds;
  CHECK(away_s <= 25 * 60);
  CHECK(away_s >= 0.95 * 25 * 60);
}

TEST_CASE("a talk is held near the end, behind the briefs", "[find][planned-stops]") {
  const auto answer = answer_in(town(), wish_with(town(), {4, 5, {Kind::roundabout}}));
  const wish::Loop& loop = answer.loops.at(0);
  const auto talks = planned(loop, "talk");
  REQUIRE(talks.size() == 1);
  CHECK(talks[0].seconds == 300);
  CHECK(talks[0].stretch > planned(loop, "brief").at(0).stretch);
  CHECK(talks[0].stretch + 1 < loop.stretches.size());
  CHECK(loop.stop_seconds == 540);
  CHECK(false_claim_in(town(), answer) == "");
}

TEST_CASE("two new kinds get a brief each, at one place or at two", "[find][planned-stops]") {
  const auto answer =
      answer_in(town(), wish_with(town(), {3, 0, {Kind::roundabout, Kind::level_crossing}}));
  const wish::Loop& loop = answer.loops.at(0);
  double sum_s = 0;
  for (const wish::PullUp& brief : planned(loop, "brief")) sum_s += brief.seconds;
  CHECK(sum_s == 360);
  CHECK(false_claim_in(town(), answer) == "");
}

TEST_CASE("a new kind that isn't passed needs no brief", "[find][planned-stops]") {
  const auto answer = answer_in(town(), wish_with(town(), {4, 0, {Kind::ford}}));
  CHECK(answer.loops.at(0).pull_ups.size() >= planned(answer.loops[0], "").size());
  CHECK(planned(answer.loops[0], "brief").empty());
  CHECK_FALSE(answer.shortfall);
  CHECK(false_claim_in(town(), answer) == "");
}

TEST_CASE("where no place is mapped the shortfall says so, and the loop is given",
          "[find][planned-stops]") {
  const BuiltTown shut = crossing_town("parking:both:restriction=no_stopping");
  const auto answer = answer_in(shut, wish_with(shut, {4, 5, {Kind::roundabout}}));
  REQUIRE(answer.loops.size() == 1);
  REQUIRE(answer.shortfall);
  CHECK(
      answer.shortfall->stops ==
      std::vector<std::string>{
          "loop 1: the brief before the first roundabout has no place: the map has none to pull up "
          "within 5 minutes before it; 4 minutes stay free for it",
          "loop 1: the talk near the end has no place: the map has none to pull up within 10 "
          "minutes before it; 5 minutes stay free for it"});
  CHECK(answer.loops[0].stop_seconds == 0);
  CHECK(answer.loops[0].seconds.likely <= 16 * 60);
  CHECK(false_claim_in(shut, answer) == "");
}

TEST_CASE("the sheet says where to stop, for what, how long and until when",
          "[card][planned-stops]") {
  const auto answer = answer_in(town(), wish_with(town(), {4, 5, {Kind::roundabout}}));
  wish::Loop loop = answer.loops.at(0);
  wish::resolve(town().roads(), loop);
  const std::string text =
      card::write_text({town().roads(), answer, loop, setting_of(town().roads())});
  CHECK_THAT(text, Contains("ull up on the left when it is safe"));
  CHECK_THAT(text, Contains("brief, 4 min"));
  CHECK_THAT(text, Contains("talk, 5 min"));
  CHECK_THAT(text, Contains("by 15:"));
  CHECK_THAT(text, Contains("home: "));
  CHECK_THAT(text, Contains("leaving it"));
}

// --- lies -------------------------------------------------------------------------------------

template <class Lie>
std::string told_of(Lie lie) {
  wish::Answer answer = answer_in(town(), wish_with(town(), {4, 5, {Kind::roundabout}}));
  lie(answer, answer.loops.at(0));
  return false_claim_in(town(), answer);
}

wish::PullUp& first(wish::Loop& loop, std::string_view purpose) {
  return *std::ranges::find(loop.pull_ups, purpose, &wish::PullUp::purpose);
}

TEST_CASE("a place that isn't one, or lies on the wrong side, is told", "[proof][pull-ups]") {
  CHECK_THAT(told_of([](auto&, wish::Loop& loop) { first(loop, "").at_m += 40; }),
             Contains("the area has no place to pull up there"));
  CHECK_THAT(told_of([](auto&, wish::Loop& loop) { loop.pull_ups[0].left = false; }),
             Contains("side: the file says 'right', the area says 'left'"));
  CHECK_THAT(told_of([](auto&, wish::Loop& loop) { loop.pull_ups[0].check = "nothing"; }),
             Contains("the file says 'nothing'"));
}

TEST_CASE("a later moment to drive on than there is is told", "[proof][pull-ups]") {
  CHECK_THAT(told_of([](auto&, wish::Loop& loop) { loop.pull_ups[0].leave_by_s += 60; }),
             Contains("drive on by"));
}

TEST_CASE("a hard pass left out of the list of places behind is told", "[proof][pull-ups]") {
  CHECK_THAT(told_of([](auto&, wish::Loop& loop) { loop.stops_after.pop_back(); }),
             Contains("hard ones"));
}

TEST_CASE("none where there is a place, and not the next place, are told", "[proof][pull-ups]") {
  CHECK_THAT(told_of([](auto&, wish::Loop& loop) {
               for (wish::StopAfter& one : loop.stops_after) one.pull_up.reset();
             }),
             Contains("there is a place to pull up, on stretch"));
  CHECK_THAT(told_of([](auto&, wish::Loop& loop) {
               for (wish::StopAfter& one : loop.stops_after)
                 if (one.pull_up) one.seconds += 30;
             }),
             Contains("time to pull-up"));
}

TEST_CASE("a brief or a talk of another length than asked is told", "[proof][planned-stops]") {
  // The minutes change with it, so that only the stop itself is false.
  const auto longer = [](wish::Answer& answer, int minutes) {
    answer.wish.minutes = *answer.wish.minutes + minutes;
    for (wish::PullUp& place : answer.loops.at(0).pull_ups) place.leave_by_s += 60 * minutes;
  };
  CHECK_THAT(told_of([&](wish::Answer& answer, auto&) {
               answer.wish.stops.brief_minutes = 5;
               longer(answer, 1);
             }),
             Contains("min before the first passes of"));
  CHECK_THAT(told_of([&](wish::Answer& answer, auto&) {
               answer.wish.stops.talk_minutes = 4;
               longer(answer, -1);
             }),
             Contains("no talk as asked for"));
}

TEST_CASE("a planned stop left out is told when there is a place for it",
          "[proof][planned-stops]") {
  const std::string told = told_of([](wish::Answer& answer, auto&) {
    answer.wish.stops.new_kinds.push_back(Kind::level_crossing);
    answer.wish.stops.brief_minutes = 4;
    answer.wish.minutes = *answer.wish.minutes + 4;
    for (wish::PullUp& place : answer.loops.at(0).pull_ups) place.leave_by_s += 240;
  });
  CHECK_THAT(told, Contains("there is a place for the brief") || Contains("planned stops without"));
}

TEST_CASE("a stop without a place that isn't told is told", "[proof][planned-stops]") {
  const BuiltTown shut = crossing_town("parking:both:restriction=no_stopping");
  wish::Answer answer = answer_in(shut, wish_with(shut, {4, 0, {Kind::roundabout}}));
  REQUIRE(answer.shortfall);
  answer.shortfall.reset();
  CHECK(false_claim_in(shut, answer) ==
        "shortfall: 0 planned stops without a place are told, not 1");
}

}  // namespace
}  // namespace loopwright::test
