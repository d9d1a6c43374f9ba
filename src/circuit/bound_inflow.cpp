// Both ways are counted first, the one of fewer terms is written.
#include "circuit/bound_inflow.hpp"

#include <algorithm>

namespace loopwright::circuit {

Inflow::Inflow(const Network& network)
    : network_(network),
      in_(network.node_count),
      out_(network.node_count),
      times_(network.arcs.size(), 0) {
  for (std::uint32_t a = 0; a < network.arcs.size(); ++a) {
    in_[network.arcs[a].to].push_back(a);
    out_[network.arcs[a].from].push_back(a);
  }
}

void Inflow::collect(std::uint32_t arc, int times) {
  if (times_[arc] == 0) met_.push_back(arc);
  times_[arc] += times;
}

void Inflow::add(const std::vector<std::uint8_t>& nodes, double factor, Row& row) {
  std::size_t ways_in = 0, inside = 0, through = 0;
  for (std::uint32_t node = 0; node < network_.node_count; ++node) {
    if (nodes[node] == 0) continue;
    for (const std::uint32_t a : in_[node])
      ++(nodes[network_.arcs[a].from] == 0 ? ways_in : inside);
    through += std::min(in_[node].size(), out_[node].size());
  }
  met_.clear();
  for (std::uint32_t node = 0; node < network_.node_count; ++node) {
    if (nodes[node] == 0) continue;
    const bool direct = ways_in <= inside + through;
    for (const std::uint32_t a : in_[node])
      if (direct == (nodes[network_.arcs[a].from] == 0)) collect(a, direct ? 1 : -1);
    if (direct) continue;
    for (const std::uint32_t a : in_[node].size() < out_[node].size() ? in_[node] : out_[node])
      collect(a, 1);
  }
  for (const std::uint32_t a : met_) {
    if (times_[a] != 0) row.terms.push_back({static_cast<int>(a), factor * times_[a]});
    times_[a] = 0;
  }
}

}  // namespace loopwright::circuit
