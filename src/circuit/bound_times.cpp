// One sweep over passes and entries: the quickest pass of each entry decides.
#include "circuit/bound_times.hpp"

#include <algorithm>
#include <limits>

namespace loopwright::circuit {

std::int64_t begin_to_begin(const Problem& problem, const Pass& pass, std::uint32_t to,
                            std::int64_t least_ms) {
  const std::int64_t ms = plus(pass.inner_ms, problem.leg(pass.exit, to));
  if (to == problem.end() || ms >= least_ms) return ms;
  return plus(pass.inner_ms, problem.longer_leg(pass.exit, to, least_ms - pass.inner_ms));
}

namespace {

constexpr std::uint32_t no_goal = std::numeric_limits<std::uint32_t>::max(),
                        some_goals = no_goal - 1;

/// By exit and by entry: the one goal for which its passes can have worth and nothing else; or no_goal, some_goals.
struct OneGoal {
  explicit OneGoal(const Problem& problem)
      : of_exit(problem.exit_count, no_goal), of_entry(problem.entry_count, no_goal) {
    for (const Pass& pass : problem.passes)
      for (const std::uint32_t group : pass.groups) {
        const std::uint32_t goal = problem.groups[group].goal;
        // Passes that count need no spacing.
        const std::uint32_t is = problem.goals[goal].least > 0 ? some_goals : goal;
        for (std::uint32_t* known : {&of_exit[pass.exit], &of_entry[pass.entry]})
          *known = *known == no_goal || *known == is ? is : some_goals;
      }
  }
  std::vector<std::uint32_t> of_exit, of_entry;
};

}  // namespace

std::vector<std::int64_t> legs_between_counted(const Problem& problem) {
  std::vector<std::int64_t> legs = problem.legs;
  const OneGoal one(problem);
  std::vector<std::vector<const Pass*>> by_exit(problem.exit_count);
  for (const Pass& pass : problem.passes)
    if (!pass.groups.empty()) by_exit[pass.exit].push_back(&pass);
  for (std::uint32_t exit = 0; exit < problem.exit_count; ++exit) {
    const std::uint32_t goal = one.of_exit[exit];
    if (goal >= some_goals || problem.goals[goal].spacing_ms == 0) continue;
    for (std::uint32_t entry = 0; entry < problem.entry_count; ++entry) {
      if (one.of_entry[entry] != goal) continue;
      std::int64_t ms = no_way;  // after whichever pass allows the least
      for (const Pass* pass : by_exit[exit])
        ms = std::min(
            ms, problem.longer_leg(exit, entry, problem.goals[goal].spacing_ms - pass->inner_ms));
      legs[static_cast<std::size_t>(exit) * (problem.entry_count + 1) + entry] = ms;
    }
  }
  return legs;
}

QuickestWays::QuickestWays(const Problem& problem, std::int64_t least_ms) {
  measure(problem, [&](const Pass& pass, std::uint32_t to) {
    return begin_to_begin(problem, pass, to, least_ms);
  });
}

QuickestWays::QuickestWays(const Problem& problem, std::span<const std::int64_t> legs) {
  measure(problem, [&](const Pass& pass, std::uint32_t to) {
    return plus(pass.inner_ms,
                legs[static_cast<std::size_t>(pass.exit) * (problem.entry_count + 1) + to]);
  });
}

template <class Ms>
void QuickestWays::measure(const Problem& problem, Ms ms) {
  end_ = problem.end();
  width_ = problem.entry_count + 1;
  between_.assign(static_cast<std::size_t>(problem.entry_count) * width_, no_way);
  for (const Pass& pass : problem.passes) {
    if (pass.groups.empty()) continue;
    std::int64_t* row = &between_[pass.entry * width_];
    for (std::uint32_t to = 0; to <= end_; ++to) row[to] = std::min(row[to], ms(pass, to));
  }
}

}  // namespace loopwright::circuit
