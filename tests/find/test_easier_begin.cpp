// Where a lesson could begin that can't be had from its door. That the instructor drives a beginner to easy roads first is
// common practice, no source; what is near and how much road is enough are ours.
#include <catch2/catch.hpp>

#include "find/crossing_lesson.hpp"
#include "loopwright/find/easier_begin.hpp"

namespace loopwright::test {
namespace {

/// From a door between these two, over nothing harder. Fold Lane, from K to L, is narrow, and harder than 3 whichever way one leaves.
wish::Wish from_between(char one, char other, int hardest) {
  const road::Roads roads = town().roads();
  const Point a = roads.nodes[town().node(one).index()].at;
  const Point b = roads.nodes[town().node(other).index()].at;
  wish::Wish wish = crossing_wish(town(), 15, {"turn-off=1"});
  wish.home = {a.lat_e7 / 2 + b.lat_e7 / 2, a.lon_e7 / 2 + b.lon_e7 / 2};
  wish.hardest = hardest;
  return wish;
}

TEST_CASE("a lesson that can't be had from the door is had from the place that is named",
          "[find][begin]") {
  const road::Roads roads = town().roads();
  wish::Wish wish = from_between('K', 'L', 3);
  REQUIRE(find::find_loops(roads, wish, setting_of(roads)).loops.empty());
  const auto begin = find::easier_begin(roads, wish, setting_of(roads));
  REQUIRE(begin);
  CHECK(begin->place.off_m >= 200);
  CHECK(begin->there_minutes > 0);
  CHECK(begin->back_minutes > 0);
  wish.drive_out = wish.drive_back = begin->place.at;
  const wish::Answer answer = answer_in(town(), wish);
  CHECK_FALSE(answer.loops.empty());
  CHECK_FALSE(answer.shortfall);
  CHECK(false_claim_in(town(), answer) == "");
}

TEST_CASE(
    "nobody is sent elsewhere who says himself where the learner begins, or finds nothing too hard",
    "[find][begin]") {
  const road::Roads roads = town().roads();
  wish::Wish told = from_between('K', 'L', 3);
  told.drive_out = from_between('D', 'H', 3).home;
  CHECK_FALSE(find::easier_begin(roads, told, setting_of(roads)));
  wish::Wish anything = from_between('K', 'L', 3);
  anything.hardest.reset();
  CHECK_FALSE(find::easier_begin(roads, anything, setting_of(roads)));
}

TEST_CASE("where easy roads are nowhere long enough, it is told how long they are",
          "[find][begin]") {
  const road::Roads roads = town().roads();
  wish::Wish wish = from_between('K', 'L', 3);
  CHECK_FALSE(find::longest_round(roads, wish, setting_of(roads)));  // a place to begin has enough
  wish.minutes = 500;
  CHECK_FALSE(find::easier_begin(roads, wish, setting_of(roads)));
  const auto round = find::longest_round(roads, wish, setting_of(roads));
  REQUIRE(round);
  CHECK(round->place.off_m >= 200);
  CHECK(round->minutes + round->away_minutes < 500);
  CHECK(round->street_passes == 6);  // caps.txt: "street passes a day"
  CHECK(round->most_minutes > round->minutes);
  CHECK(round->most_minutes <= 3 * round->minutes + 0.001);  // 6 for 2, and main roads as before
  // So long it can be: what is told as the most can't all be had, but half of it must be.
  wish.minutes = static_cast<int>(round->minutes / 2 + round->away_minutes);
  CHECK(find::easier_begin(roads, wish, setting_of(roads)));
  wish.street_passes = 6;
  wish.minutes = 500;
  const auto already = find::longest_round(roads, wish, setting_of(roads));
  REQUIRE(already);
  CHECK(already->street_passes == 0);
  CHECK(already->minutes == round->most_minutes);
}

}  // namespace
}  // namespace loopwright::test
