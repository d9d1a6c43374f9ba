// A drive found before, at another start: kept when it still does all of its wish, else with the reason. What is kept is
// proved by the proof's own code.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "find/crossing_lesson.hpp"
#include "loopwright/find/kept_drive.hpp"
#include "loopwright/wish/resolve.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;

/// What becomes of the drive of a wish when the wish is changed.
template <class Change>
find::KeptDrive kept_when(const wish::Wish& wish, Change change) {
  const road::Roads roads = town().roads();
  wish::Answer answer = answer_in(town(), wish);
  REQUIRE(answer.loops.size() == 1);
  wish::resolve(roads, answer.loops[0]);
  wish::Wish later = wish;
  change(later);
  return find::kept_drive(roads, later, answer.loops[0], setting_of(roads));
}

std::vector<std::int64_t> ways_of(const wish::Loop& loop) {
  std::vector<std::int64_t> ways;
  for (const wish::LoopStretch& driven : loop.stretches) ways.push_back(driven.way);
  return ways;
}

TEST_CASE("the same drive ten minutes later is kept, with its own times, and holds",
          "[find][kept]") {
  const wish::Wish wish = crossing_wish(town(), 20, {"roundabout:right=1", "level-crossing=1"});
  wish::Wish later = wish;
  later.start = wish.start.plus_seconds(600);
  const auto kept = kept_when(wish, [&](wish::Wish& one) { one.start = later.start; });
  REQUIRE(kept.loop);
  CHECK(kept.why_not.empty());
  CHECK(kept.loop->start == later.start);
  CHECK(ways_of(*kept.loop) == ways_of(answer_in(town(), wish).loops[0]));
  wish::Answer answer = answer_of(town().roads(), later, {});
  answer.loops.push_back(*kept.loop);
  CHECK(false_claim_in(town(), file::read_answer(file::write_answer(answer), "kept.json")) == "");
}

TEST_CASE("a drive that takes longer than is left is told so", "[find][kept]") {
  const auto kept = kept_when(crossing_wish(town(), 20, {"roundabout=1"}),
                              [](wish::Wish& wish) { wish.minutes = 12; });
  CHECK_FALSE(kept.loop);
  CHECK_THAT(kept.why_not, Contains(" within the minutes at that hour") ||
                               Contains(" min then; 11.4 to 12 are asked for"));
}

/// "it would take 14.1 min then; 13.3 to 14 are asked for" as its three numbers.
std::vector<double> numbers_in(const std::string& why) {
  std::vector<double> numbers(3);
  const char* form = "it would take %lf min then; %lf to %lf are asked for";
  REQUIRE(std::sscanf(why.c_str(), form, &numbers[0], &numbers[1], &numbers[2]) == 3);
  return numbers;
}

TEST_CASE("a drive told to take too long also reads so, its stops counted", "[find][kept]") {
  wish::Wish wish = crossing_wish(town(), 20, {"roundabout=1"});
  for (const bool talk : {false, true}) {
    if (talk) wish.stops.talk_minutes = 4;
    const wish::Loop loop = answer_in(town(), wish).loops.at(0);
    const double likely = loop.seconds.likely / 60 + (talk ? 4 : 0);
    const auto shorter = static_cast<int>(std::ceil(likely)) - 1;
    const auto kept = kept_when(wish, [&](wish::Wish& later) { later.minutes = shorter; });
    REQUIRE_FALSE(kept.loop);
    const std::vector<double> told = numbers_in(kept.why_not);
    CHECK(told[0] >= likely - 0.001);
    CHECK(told[0] < likely + 0.1);
    CHECK(told[0] > told[2]);
    CHECK(told[1] >= 0.95 * shorter - 0.001);
    CHECK(told[2] == shorter);
  }
}

TEST_CASE("a street that is driven often enough by now is told", "[find][kept]") {
  const wish::Wish wish = crossing_wish(town(), 20, {"level-crossing=1"});
  const road::Roads roads = town().roads();
  const auto kept = kept_when(wish, [&](wish::Wish& later) {
    for (const road::Piece& piece : roads.pieces)
      if ((piece.flags & road::piece_flag::quiet) != 0 &&
          std::none_of(later.street_use.begin(), later.street_use.end(),
                       [&](const wish::StreetUse& use) { return use.way == piece.way; }))
        later.street_use.push_back({piece.way, 99, 99});
    std::sort(later.street_use.begin(), later.street_use.end(),
              [](const auto& a, const auto& b) { return a.way < b.way; });
  });
  CHECK_FALSE(kept.loop);
  CHECK_THAT(kept.why_not, Contains("ledger") || Contains("more often than they may be"));
}

TEST_CASE("a street that is kept off at the new hour is told", "[find][kept]") {
  const wish::Wish wish = crossing_wish(town(), 20, {"level-crossing=1"});
  const road::Roads roads = town().roads();
  wish::Answer answer = answer_in(town(), wish);
  wish::resolve(roads, answer.loops[0]);
  const wish::LoopStretch& middle = answer.loops[0].stretches[answer.loops[0].stretches.size() / 2];
  const auto shape = roads.shape_of(middle.stretch.piece());
  const Point at = point_along(shape, roads.piece(middle.stretch).length_m / 2);
  const auto kept = kept_when(wish, [&](wish::Wish& later) {
    later.keep_offs.push_back({middle.street, {at}, "Sa 15:05-16:00"});
    later.start = wish.start.plus_seconds(600);
  });
  CHECK_FALSE(kept.loop);
  CHECK_THAT(kept.why_not, Contains(" is shut, kept off or avoided at that hour"));
}

TEST_CASE("a lesson in parts, and a drive of one's own, are laid out anew", "[find][kept]") {
  const wish::Wish wish = crossing_wish(town(), 20, {"roundabout=1"});
  for (const bool parts : {true, false}) {
    const auto kept = kept_when(wish, [&](wish::Wish& later) {
      if (parts)
        later.easy_first = true;
      else
        later.through.push_back(later.home);
    });
    CHECK_FALSE(kept.loop);
    CHECK(kept.why_not == "a lesson in parts, or a drive of your own, is laid out by its times");
  }
}

}  // namespace
}  // namespace loopwright::test
