// A walk counted by hand.
#include <catch2/catch.hpp>

#include "loopwright/circuit/problem.hpp"

using namespace loopwright::circuit;

namespace {

/// Two places A and B a minute from each other and from home; a pass takes ten seconds.
Problem two_places() {
  Problem p;
  p.entry_count = p.exit_count = 2;
  p.legs.assign(9, 60'000);
  p.goals = {{.least = 2, .spacing_ms = 120'000}};
  p.groups = {{0, {1000, 700}, 6}, {0, {1000, 700}, 6}};
  p.passes = {{0, 0, 10'000, {0}}, {1, 1, 10'000, {1}}};
  p.most_ms = 600'000;
  return p;
}

}  // namespace

TEST_CASE("a walk that passes nothing only drives home", "[circuit]") {
  const Evaluation e = evaluate(two_places(), {});
  CHECK(e.ms == 60'000);
  CHECK(e.value == 0);
  CHECK(e.missing == 2);
}

TEST_CASE("a pass too soon after the last counts towards the number but has no worth",
          "[circuit]") {
  const Evaluation e = evaluate(two_places(), {{0, 1}, {0, 0}});
  CHECK(e.ms == 200'000);
  CHECK(e.value == 1000);
  CHECK(e.got == std::vector<int>{2});
  CHECK(e.missing == 0);
}

TEST_CASE("waiting on the way spaces it", "[circuit]") {
  const Evaluation e = evaluate(two_places(), {{0, 1, 0}, {0, 50'000, 50'000}});
  CHECK(e.ms == 370'000);
  CHECK(e.value == 2700);
}

TEST_CASE("a leg takes the least of its times that is long enough", "[circuit]") {
  Problem p;
  p.entry_count = p.exit_count = 1;
  p.legs = {40'000, 30'000, 50'000, 0};
  CHECK(p.longer_leg(0, 0, 0) == 40'000);
  CHECK(p.longer_leg(0, 0, 90'000) == 90'000);  // nothing is known
  p.longer = {{0, 3}, {{40'000, 40'000}, {60'000, 65'000}, {80'000, 80'000}}};
  CHECK(p.longer_leg(0, 0, 0) == 40'000);
  CHECK(p.longer_leg(0, 0, 40'001) == 60'000);
  CHECK(p.longer_leg(0, 0, 63'000) == 63'000);
  CHECK(p.longer_leg(0, 0, 65'001) == 80'000);
  CHECK(p.longer_leg(0, 0, 80'001) == no_way);
  CHECK(p.longer_leg(p.home(), 0, 90'000) == 90'000);
  CHECK(p.longer_leg(0, p.end(), 90'000) == 90'000);
}

TEST_CASE("a leg that can't be driven makes the walk impossible", "[circuit]") {
  Problem p = two_places();
  p.legs[1] = no_way;
  CHECK(evaluate(p, {{0, 1}, {0, 0}}).ms == no_way);
}
