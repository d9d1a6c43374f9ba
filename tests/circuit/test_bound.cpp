// Bounds against every walk there is, and against each other.
#include <catch2/catch.hpp>

#include "loopwright/circuit/circuit.hpp"
#include "made_problems.hpp"

using namespace loopwright::circuit;

namespace {

constexpr BoundWork much = {400, 4000, 400'000, {50, 1}};

/// A street with one roundabout a minute away, half a minute to pass.
Problem one_place() {
  Problem p;
  p.entry_count = p.exit_count = 1;
  p.legs = {60'000, 60'000, 60'000, 0};
  p.goals = {{0, 0}};
  p.groups = {{0, {1000, 700, 500}}};
  p.passes = {{0, 0, 30'000, {0}}};
  p.most_ms = 330'000;
  return p;
}

void check_small(std::uint64_t seed, made::Small kind, bool exact) {
  const Problem p = made::small(seed, kind);
  const made::Best best = made::by_trying_all(p);
  const Bound b = bound(p, much, {});
  INFO("seed " << seed);
  if (!best.possible) {
    CHECK((b.impossible || !exact));
    return;
  }
  REQUIRE_FALSE(b.impossible);
  CHECK(b.value >= best.value);
  const Evaluation e = evaluate(p, b.best);
  CHECK(e.ms <= p.most_ms);
  if (!exact) return;
  CHECK(b.value == best.value);
  CHECK(e.missing == 0);
  CHECK(e.value == best.value);
}

}  // namespace

TEST_CASE("a loop where nothing is wanted is worth nothing", "[circuit]") {
  Problem p = one_place();
  p.passes.clear();
  CHECK(bound(p, much, {}).value == 0);
  p.groups.clear();
  p.goals.clear();
  const Bound b = bound(p, much, {});
  CHECK(b.value == 0);
  CHECK_FALSE(b.impossible);
}

TEST_CASE("a problem without places has the empty walk", "[circuit]") {
  Problem p;
  p.legs = {0};
  p.most_ms = 1000;
  CHECK(bound(p, much, {}).value == 0);
  p.goals = {{1, 0}};
  CHECK(bound(p, much, {}).impossible);
}

TEST_CASE("three passes of one place fit, and not a fourth", "[circuit]") {
  const Bound b = bound(one_place(), much, {});
  CHECK(b.value == 2200);
  CHECK(evaluate(one_place(), b.best).value == 2200);
}

TEST_CASE("spacing that costs a pass costs its worth", "[circuit]") {
  Problem p = one_place();
  p.goals[0].spacing_ms = 120'000;
  CHECK(bound(p, much, {}).value == 1700);
  p.most_ms = 390'000;
  const Bound b = bound(p, much, {});
  CHECK(b.value == 2200);
  CHECK(b.best.wait_ms == std::vector<std::int64_t>{0, 30'000, 30'000});
}

TEST_CASE("a place that can't be driven often enough is said to be impossible", "[circuit]") {
  Problem p = one_place();
  p.goals[0].least = 3;
  CHECK_FALSE(bound(p, much, {}).impossible);
  p.goals[0].least = 4;
  CHECK(bound(p, much, {}).impossible);
}

TEST_CASE("a place without a way home is impossible only when it must be driven", "[circuit]") {
  Problem p = one_place();
  p.legs[1] = no_way;
  CHECK(bound(p, much, {}).value == 0);
  p.goals[0].least = 1;
  CHECK(bound(p, much, {}).impossible);
  p.goals[0].least = 0;
  p.legs[3] = no_way;
  CHECK(bound(p, much, {}).impossible);
}

TEST_CASE("bounds of small problems are what trying every walk finds", "[circuit]") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    check_small(seed, {}, true);
    check_small(seed, {.spacing = true}, true);
    check_small(seed, {.several_goals = true, .least = true}, true);
  }
}

TEST_CASE("bounds of small problems under caps are what trying every walk finds", "[circuit]") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    check_small(seed, {.caps = true}, true);
    check_small(seed, {.spacing = true, .caps = true}, true);
    check_small(seed, {.several_goals = true, .least = true, .caps = true}, false);
  }
}

TEST_CASE(
    "bounds of small problems whose legs take only some times are what trying every walk finds",
    "[circuit]") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    check_small(seed, {.spacing = true, .steps = true}, true);
    check_small(seed, {.spacing = true, .caps = true, .steps = true}, true);
    check_small(seed, {.several_goals = true, .least = true, .spacing = true, .steps = true},
                false);
  }
}

TEST_CASE("the search waits only as long as legs may take", "[circuit]") {
  int waits = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const Problem p = made::small(seed, {.spacing = true, .steps = true});
    const Walk walk = search(p, {200, 1});
    CHECK(evaluate(p, walk).value <= made::by_trying_all(p).value);
    for (std::size_t i = 1; i < walk.passes.size(); ++i) {
      const std::uint32_t exit = p.passes[walk.passes[i - 1]].exit;
      const std::uint32_t entry = p.passes[walk.passes[i]].entry;
      const std::int64_t ms = p.leg(exit, entry) + walk.wait_ms[i];
      CHECK(p.longer_leg(exit, entry, ms) == ms);
      waits += walk.wait_ms[i] > 0 ? 1 : 0;
    }
  }
  CHECK(waits > 10);
}

TEST_CASE("of places that count once the search passes each once", "[circuit]") {
  Problem p = made::towns(1, {.towns = 2, .roundabouts = 12, .most_ms = 1'800'000});
  const Evaluation free = evaluate(p, search(p, {300, 1}));
  // Groups are made place by place; a few of these share a cap.
  for (std::uint32_t g = 0; g < p.groups.size(); ++g) p.groups[g].cap = g / 4;
  p.caps.assign(p.groups.size() / 4 + 1, 1);
  const Walk walk = search(p, {300, 1});
  const Evaluation capped = evaluate(p, walk);
  CHECK(capped.value > 0);
  CHECK(capped.value <= 1000 * static_cast<std::int64_t>(p.caps.size()));
  CHECK(capped.value < free.value);
  const Bound b = bound(p, {20, 10, 20'000'000, {50, 1}}, walk);
  CHECK(b.value >= capped.value);
  CHECK(b.value <= 1000 * static_cast<std::int64_t>(p.caps.size()));
}

TEST_CASE("bounds of small problems with several spaced goals are no lower than the best",
          "[circuit]") {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    check_small(seed, {.several_goals = true, .least = true, .spacing = true}, false);
    check_small(seed, {.several_goals = true, .spacing = true, .caps = true}, false);
    check_small(seed, {.several_goals = true, .spacing = true, .steps = true}, false);
  }
}

TEST_CASE("a bound holds wherever the work ends", "[circuit]") {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const Problem p = made::small(seed, {.several_goals = true});
    const made::Best best = made::by_trying_all(p);
    if (!best.possible) continue;
    for (const int work : {0, 50, 150, 500, 1500})  // of some fifty columns
      for (const int nodes : {0, 1, 2, 5})
        CHECK(bound(p, {2, nodes, work, {0, 1}}, {}).value >= best.value);
  }
}

TEST_CASE("more time and less spacing never lower the bound", "[circuit]") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    Problem p = made::small(seed, {.several_goals = false, .spacing = true});
    const std::int64_t strict = bound(p, much, {}).value;
    p.goals[0].spacing_ms /= 2;
    const std::int64_t closer = bound(p, much, {}).value;
    p.most_ms += 60'000;
    CHECK(closer >= strict);
    CHECK(bound(p, much, {}).value >= closer);
  }
}

TEST_CASE("the same problem gives the same bound and walk", "[circuit]") {
  const Problem p = made::towns(1, {.towns = 2, .roundabouts = 12, .most_ms = 1'800'000});
  const Bound a = bound(p, {20, 10, 20'000'000, {50, 1}}, {}),
              b = bound(p, {20, 10, 20'000'000, {50, 1}}, {});
  CHECK(a.value == b.value);
  CHECK(a.best == b.best);
  CHECK(a.value >= evaluate(p, a.best).value);
}
