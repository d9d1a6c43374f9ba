// Small problems by dice, against a general solver's optimum and, where there are few walks, all of them.
#include <algorithm>
#include <catch2/catch.hpp>

#include "circuit/made_problems.hpp"
#include "circuit/programme.hpp"
#include "loopwright/base/dice.hpp"
#include "loopwright/circuit/circuit.hpp"

using namespace loopwright;
using namespace loopwright::circuit;
using test::best_value_by_programme, test::least_time_by_programme;

namespace {

constexpr int most_steps = 6;

std::int64_t some_seconds(Dice& dice, std::size_t least, std::size_t most) {
  return static_cast<std::int64_t>(least + dice.below(most - least + 1)) * 1000;
}

Group some_group(Dice& dice, std::uint32_t goal) {
  Group group{goal, {}, static_cast<int>(1 + dice.below(3))};
  static constexpr std::int64_t falling[] = {1000, 700, 500, 300};
  const std::size_t worths = dice.below(5);
  group.worths.assign(falling, falling + worths);
  return group;
}

/// Up to 14 passes between up to 5 entries and exits, in whole seconds, for about 5 passes at most.
Problem some_problem(std::uint64_t seed) {
  Dice dice(seed);
  Problem p;
  p.entry_count = p.exit_count = static_cast<std::uint32_t>(2 + dice.below(4));
  for (std::size_t i = 0; i < (p.exit_count + 1U) * (p.entry_count + 1U); ++i)
    p.legs.push_back(dice.below(12) == 0 ? no_way : some_seconds(dice, 20, 120));
  const std::size_t goals = 1 + dice.below(3);
  for (std::size_t g = 0; g < goals; ++g)
    p.goals.push_back({static_cast<int>(dice.below(3) == 0 ? 1 + dice.below(2) : 0),
                       dice.below(2) == 0 ? 0 : some_seconds(dice, 60, 150)});
  const std::size_t groups = goals + dice.below(5);
  for (std::size_t g = 0; g < groups; ++g)
    p.groups.push_back(
        some_group(dice, static_cast<std::uint32_t>(g < goals ? g : dice.below(goals))));
  const std::size_t passes = 3 + dice.below(12);
  for (std::size_t i = 0; i < passes; ++i) {
    Pass pass{static_cast<std::uint32_t>(dice.below(p.entry_count)),
              static_cast<std::uint32_t>(dice.below(p.exit_count)),
              some_seconds(dice, 5, 30),
              {}};
    for (std::uint32_t g = 0; g < groups; ++g) {
      const bool goal_taken =
          std::any_of(pass.groups.begin(), pass.groups.end(),
                      [&](std::uint32_t o) { return p.groups[o].goal == p.groups[g].goal; });
      if (!goal_taken && dice.below(groups) == 0) pass.groups.push_back(g);
    }
    p.passes.push_back(pass);
  }
  made::close_legs(p);
  p.most_ms = some_seconds(dice, 150, 360);
  return p;
}

/// Passes of the walk with most of them that the time allows.
int most_passes(const Problem& p) {
  std::vector<std::int64_t> at(p.exit_count, no_way);
  int passes = 0;
  for (bool on = true; on && passes <= most_steps; passes += on ? 1 : 0) {
    std::vector<std::int64_t> next(p.exit_count, no_way);
    on = false;
    for (const Pass& pass : p.passes) {
      std::int64_t begins = passes == 0 ? p.leg(p.home(), pass.entry) : no_way;
      for (std::uint32_t x = 0; passes > 0 && x < p.exit_count; ++x)
        begins = std::min(begins, at[x] + p.leg(x, pass.entry));
      next[pass.exit] = std::min(next[pass.exit], begins + pass.inner_ms);
      on = on || begins + pass.inner_ms + p.leg(pass.exit, p.end()) <= p.most_ms;
    }
    at = next;
  }
  return passes;
}

int needed(const Problem& p) {
  int sum = 0;
  for (const Goal& goal : p.goals) sum += goal.least;
  return sum;
}

/// All orders of passes up to so many.
void try_quickest(const Problem& p, Walk& walk, std::int64_t& best, int more) {
  const Evaluation e = evaluate(p, walk);
  if (e.missing == 0) best = std::min(best, e.ms);
  for (std::uint32_t row = 0; more > 0 && row < p.passes.size(); ++row) {
    walk.passes.push_back(row);
    walk.wait_ms.push_back(0);
    try_quickest(p, walk, best, more - 1);
    walk.passes.pop_back();
    walk.wait_ms.pop_back();
  }
}

struct Tally {
  int problems = 0, possible = 0, proved = 0, search_best = 0, spaced = 0, tried = 0;
};

void check_value(const Problem& p, int steps, Tally& tally) {
  const std::optional<std::int64_t> best = best_value_by_programme(p, steps);
  const Walk found = search(p, {300, 1});
  const Evaluation e = evaluate(p, found);
  const Bound b = bound(p, {}, found);
  const Evaluation with_bound = evaluate(p, b.best);
  if (p.leg(p.home(), p.end()) <= p.most_ms) CHECK(e.ms <= p.most_ms);
  if (b.impossible) CHECK_FALSE(best);
  if (!best) {
    const bool impossible = e.missing > 0 || e.ms > p.most_ms;
    CHECK(impossible);
    return;
  }
  ++tally.possible;
  CHECK(b.value >= *best);
  if (e.missing == 0) CHECK(e.value <= *best);
  if (with_bound.missing == 0 && with_bound.value == b.value) {
    ++tally.proved;
    CHECK(b.value == *best);
  }
  tally.search_best += e.missing == 0 && e.value == *best ? 1 : 0;
  if (steps > 3) return;
  ++tally.tried;
  const made::Best tried = made::by_trying_all(p);
  CHECK(tried.possible);
  CHECK(tried.value == *best);
}

void check_least_time(const Problem& p) {
  const std::optional<std::int64_t> least = least_time_by_programme(p, needed(p));
  const LeastTime t = least_time(p, {});
  REQUIRE(t.proved);
  CHECK(t.at_least_ms == least.value_or(no_way));
  REQUIRE(t.walk.has_value() == least.has_value());
  if (t.walk) {
    CHECK(evaluate(p, *t.walk).ms == *least);
    CHECK(evaluate(p, *t.walk).missing == 0);
  }
  if (needed(p) > 3) return;
  Walk walk;
  std::int64_t tried = no_way;
  try_quickest(p, walk, tried, needed(p));
  CHECK(tried == least.value_or(no_way));
}

}  // namespace

TEST_CASE("200 small problems have the value and the least time a general solver finds",
          "[circuit][exact]") {
  Tally tally;
  for (std::uint64_t seed = 1; tally.problems < 200; ++seed) {
    const Problem p = some_problem(seed);
    const int steps = most_passes(p);
    if (steps > most_steps) continue;
    INFO("problem " << seed);
    ++tally.problems;
    tally.spaced += std::any_of(p.goals.begin(), p.goals.end(),
                                [](const Goal& goal) { return goal.spacing_ms > 0; });
    check_value(p, steps, tally);
    check_least_time(p);
  }
  CAPTURE(tally.possible, tally.proved, tally.search_best, tally.spaced, tally.tried);
  CHECK(tally.possible >= 120);
  CHECK(tally.spaced >= 100);
  CHECK(tally.tried >= 40);
  CHECK(tally.proved >= tally.possible * 9 / 10);
  CHECK(tally.search_best >= tally.possible * 9 / 10);
}
