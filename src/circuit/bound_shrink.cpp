// Kruskal's order (1956): arcs by falling flow, each joins two sets. Cut sets of travelling salesman
// programmes are often found so ("shrinking"; Padberg and Rinaldi 1990), in place of a flow each.
#include "circuit/bound_shrink.hpp"

#include <algorithm>
#include <numeric>

namespace loopwright::circuit {

std::vector<std::vector<std::uint32_t>> held_together(const Network& network,
                                                      std::span<const double> amounts) {
  constexpr double least = 1e-6;
  std::vector<std::uint32_t> order;
  for (std::uint32_t a = 0; a < network.arcs.size(); ++a)
    if (amounts[a] > least && network.arcs[a].from != network.home &&
        network.arcs[a].to != network.end)
      order.push_back(a);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::uint32_t a, std::uint32_t b) { return amounts[a] > amounts[b]; });
  std::vector<std::uint32_t> set_of(network.node_count);
  std::iota(set_of.begin(), set_of.end(), 0U);
  std::vector<std::vector<std::uint32_t>> members(network.node_count), sets;
  for (std::uint32_t node = 0; node < network.node_count; ++node) members[node] = {node};
  for (const std::uint32_t a : order) {
    std::uint32_t into = set_of[network.arcs[a].from], gone = set_of[network.arcs[a].to];
    if (into == gone) continue;
    if (members[into].size() < members[gone].size()) std::swap(into, gone);
    for (const std::uint32_t node : members[gone]) set_of[node] = into;
    members[into].insert(members[into].end(), members[gone].begin(), members[gone].end());
    members[gone].clear();
    sets.push_back(members[into]);
  }
  return sets;
}

}  // namespace loopwright::circuit
