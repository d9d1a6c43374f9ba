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

std::int64_t Problem::longer_leg(std::uint32_t exit, std::uint32_t entry,
                                 std::int64_t least_ms) const {
  const std::int64_t quickest_ms = leg(exit, entry);
  if (quickest_ms >= least_ms) return quickest_ms;
  if (longer.first.empty() || exit == home() || entry == end()) return least_ms;
  const std::uint32_t* first =
      longer.first.data() + static_cast<std::size_t>(exit) * entry_count + entry;
  if (first[0] == first[1]) return least_ms;
  const auto end = longer.spans.begin() + first[1];
  const auto span =
      std::partition_point(longer.spans.begin() + first[0], end,
                           [=](const LongerLegs::Span& each) { return each.to_ms < least_ms; });
  return span == end ? no_way : std::max<std::int64_t>(span->from_ms, least_ms);
}

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
