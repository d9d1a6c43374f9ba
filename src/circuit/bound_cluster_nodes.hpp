// Which of a network's nodes and arcs lie in a cluster: its entries, what lies behind passes from them, and the arcs
// between.
//
//   ClusterNodes nodes(network, clusters);   inflow.add(nodes.of(cluster), -1, row);
//
// Why lists are made as they are asked for: clusters are nested a hundred deep, so that the arcs of all of them are a
// hundred times those of the network.
#pragma once

#include <cstdint>
#include <vector>

#include "circuit/bound_clusters.hpp"
#include "circuit/bound_network.hpp"

namespace loopwright::circuit {

class ClusterNodes {
 public:
  /// Rules: both outlive it.
  ClusterNodes(const Network& network, const Clusters& clusters);

  /// By node, 1 for those in the cluster.
  [[nodiscard]] std::vector<std::uint8_t> of(std::uint32_t cluster) const;
  /// Rows of the arcs with both ends in it.
  [[nodiscard]] std::vector<std::uint32_t> arcs_inside(std::uint32_t cluster) const;
  /// The smallest cluster around a node; none around home, the end and nodes that no pass leads to.
  [[nodiscard]] std::uint32_t around(std::uint32_t node) const { return place_[node]; }
  /// The smallest around both ends, or none.
  [[nodiscard]] std::uint32_t around(const Arc& arc) const;
  [[nodiscard]] const Network& network() const { return network_; }
  [[nodiscard]] const Clusters& clusters() const { return clusters_; }

 private:
  const Network& network_;
  const Clusters& clusters_;
  std::vector<std::uint32_t> place_;                ///< by node
  std::vector<std::vector<std::uint32_t>> behind_;  ///< by place: nodes that its passes lead to
  std::vector<std::vector<std::uint32_t>> out_;     ///< by node: arcs that leave it
};

}  // namespace loopwright::circuit
