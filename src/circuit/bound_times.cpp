// One sweep over passes and entries: the quickest pass of each entry decides.
#include "circuit/bound_times.hpp"

#include <algorithm>

namespace loopwright::circuit {

std::int64_t begin_to_begin(const Problem& problem, const Pass& pass, std::uint32_t to,
                            std::int64_t least_ms) {
  const std::int64_t ms = plus(pass.inner_ms, problem.leg(pass.exit, to));
  if (to == problem.end() || ms >= least_ms) return ms;
  return plus(pass.inner_ms, problem.longer_leg(pass.exit, to, least_ms - pass.inner_ms));
}

QuickestWays::QuickestWays(const Problem& problem, std::int64_t least_ms)
    : end_(problem.end()),
      width_(problem.entry_count + 1),
      between_(static_cast<std::size_t>(problem.entry_count) * width_, no_way) {
  for (const Pass& pass : problem.passes) {
    if (pass.groups.empty()) continue;
    std::int64_t* row = &between_[pass.entry * width_];
    for (std::uint32_t to = 0; to <= end_; ++to)
      row[to] = std::min(row[to], begin_to_begin(problem, pass, to, least_ms));
  }
}

}  // namespace loopwright::circuit
