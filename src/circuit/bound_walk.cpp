// Hierholzer's method (1873): go on along unused arcs until stuck at the end; what is left hangs on the way
// as closed rounds, taken in while going back.
#include "circuit/bound_walk.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::circuit {

namespace {

constexpr double used = 0.01;  // of a flow: less is not followed; ours

}  // namespace

Walk walk_of(const Problem& problem, const Network& network, std::span<const double> amounts,
             std::int64_t spacing_ms) {
  std::vector<std::vector<std::uint32_t>> out(network.node_count);
  for (std::uint32_t a = 0; a < network.arcs.size(); ++a)
    for (long times = std::lround(amounts[a]); times > 0; --times)
      out[network.arcs[a].from].push_back(a);
  constexpr std::uint32_t none = 0xffffffff;
  struct Step {
    std::uint32_t node, by;
  };
  std::vector<Step> stack = {{network.home, none}};
  std::vector<std::uint32_t> backwards;
  while (!stack.empty()) {
    const Step at = stack.back();
    if (out[at.node].empty()) {
      if (at.by != none) backwards.push_back(at.by);
      stack.pop_back();
      continue;
    }
    const std::uint32_t a = out[at.node].back();
    out[at.node].pop_back();
    stack.push_back({network.arcs[a].to, a});
  }
  Walk walk;
  for (auto a = backwards.rbegin(); a != backwards.rend(); ++a)
    if (network.arcs[*a].pass != no_pass) walk.passes.push_back(network.arcs[*a].pass);
  walk.wait_ms.assign(walk.passes.size(), 0);
  for (std::size_t i = 1; i < walk.passes.size(); ++i) {
    const Pass& last = problem.passes[walk.passes[i - 1]];
    const std::uint32_t entry = problem.passes[walk.passes[i]].entry;
    walk.wait_ms[i] = problem.longer_leg(last.exit, entry, spacing_ms - last.inner_ms) -
                      problem.leg(last.exit, entry);
  }
  return walk;
}

std::vector<std::uint8_t> used_passes(const Problem& problem, const Network& network,
                                      std::span<const double> amounts) {
  std::vector<std::uint8_t> mask(problem.passes.size(), 0);
  for (std::uint32_t a = 0; a < network.arcs.size(); ++a)
    if (network.arcs[a].pass != no_pass && amounts[a] > used) mask[network.arcs[a].pass] = 1;
  return mask;
}

}  // namespace loopwright::circuit
