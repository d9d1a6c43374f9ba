// Entries that share an exit are one place, so all passes to a node between come from the same.
#include "circuit/bound_cluster_nodes.hpp"

namespace loopwright::circuit {

ClusterNodes::ClusterNodes(const Network& network, const Clusters& clusters)
    : network_(network),
      clusters_(clusters),
      place_(network.node_count, no_cluster),
      behind_(clusters.place_count),
      out_(network.node_count) {
  for (std::uint32_t row = 0; row < clusters.place_count; ++row)
    for (const std::uint32_t entry : clusters.all[row].entries) place_[entry] = row;
  for (std::uint32_t row = 0; row < network.arcs.size(); ++row) {
    const Arc& arc = network.arcs[row];
    out_[arc.from].push_back(row);
    if (arc.pass == no_pass || place_[arc.to] != no_cluster) continue;
    place_[arc.to] = place_[arc.from];
    behind_[place_[arc.from]].push_back(arc.to);
  }
}

std::vector<std::uint8_t> ClusterNodes::of(std::uint32_t cluster) const {
  std::vector<std::uint8_t> in(network_.node_count, 0);
  for (const std::uint32_t entry : clusters_.all[cluster].entries) {
    in[entry] = 1;
    for (const std::uint32_t node : behind_[place_[entry]]) in[node] = 1;
  }
  return in;
}

std::vector<std::uint32_t> ClusterNodes::arcs_inside(std::uint32_t cluster) const {
  const std::vector<std::uint8_t> in = of(cluster);
  std::vector<std::uint32_t> arcs;
  for (std::uint32_t node = 0; node < network_.node_count; ++node) {
    if (in[node] == 0) continue;
    for (const std::uint32_t arc : out_[node])
      if (in[network_.arcs[arc].to] != 0) arcs.push_back(arc);
  }
  return arcs;
}

std::uint32_t ClusterNodes::around(const Arc& arc) const {
  const std::uint32_t a = place_[arc.from], b = place_[arc.to];
  return a == no_cluster || b == no_cluster ? no_cluster : clusters_.common(a, b);
}

}  // namespace loopwright::circuit
