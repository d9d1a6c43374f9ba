// One pass over the walk: the clock goes on leg by leg; each group takes the worth of its next pass when
// the goal's spacing allows.
#include <algorithm>

#include "loopwright/circuit/problem.hpp"

namespace loopwright::circuit {

namespace {

struct Counter {
  explicit Counter(const Problem& p)
      : problem(p),
        counted(p.groups.size(), 0),
        worth(p.groups.size(), 0),
        of_cap(p.caps.size(), 0),
        next_ms(p.goals.size(), 0),
        got(p.goals.size(), 0) {}

  void pass(const Pass& pass, std::int64_t begins_ms) {
    for (const std::uint32_t row : pass.groups) {
      const Group& group = problem.groups[row];
      if (counted[row]++ < group.most_counted) ++got[group.goal];
      if (begins_ms < next_ms[group.goal] || worth[row] >= group.worths.size()) continue;
      if (group.cap != no_cap && of_cap[group.cap]++ >= problem.caps[group.cap]) continue;
      value += group.worths[worth[row]++];
      next_ms[group.goal] = begins_ms + problem.goals[group.goal].spacing_ms;
    }
  }

  const Problem& problem;
  std::vector<int> counted;
  std::vector<std::size_t> worth;
  std::vector<int> of_cap;
  std::vector<std::int64_t> next_ms;
  std::vector<int> got;
  std::int64_t value = 0;
};

}  // namespace

Evaluation evaluate(const Problem& problem, const Walk& walk) {
  Counter counter(problem);
  std::int64_t ms = 0;
  std::uint32_t at = problem.home();
  for (std::size_t i = 0; i < walk.passes.size(); ++i) {
    const Pass& pass = problem.passes[walk.passes[i]];
    ms = std::min(no_way, ms + problem.leg(at, pass.entry) + walk.wait_ms[i]);
    counter.pass(pass, ms);
    ms += pass.inner_ms;
    at = pass.exit;
  }
  ms = std::min(no_way, ms + problem.leg(at, problem.end()));
  Evaluation result{ms, counter.value, std::move(counter.got), 0};
  for (std::size_t g = 0; g < problem.goals.size(); ++g)
    result.missing += std::max(0, problem.goals[g].least - result.got[g]);
  return result;
}

}  // namespace loopwright::circuit
