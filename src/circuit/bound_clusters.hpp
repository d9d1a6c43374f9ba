// Entries nested by how quickly one gets from one to the other and back: the sets that cuts and branches
// speak of.
#pragma once

#include <cstdint>
#include <vector>

#include "circuit/bound_network.hpp"
#include "loopwright/circuit/problem.hpp"

namespace loopwright::circuit {

inline constexpr std::uint32_t no_cluster = std::numeric_limits<std::uint32_t>::max();

struct Cluster {
  std::uint32_t parent = no_cluster;
  std::vector<std::uint32_t> entries;  ///< ascending
};

struct Clusters {
  std::uint32_t place_count = 0;  ///< the first so many are the places
  std::vector<Cluster> all;       ///< children before parents; the last holds all entries
  std::vector<std::uint32_t>
      of_group;  ///< the smallest that holds all of the group's entries; or none
};

/// Entries that share an exit stay together (a place); places are joined two by two, the nearest first.
Clusters nested(const Problem& problem);

/// By node of the network, 1 for these entries and what passes from them lead to: at least half of the
/// passes of a node between must come from them.
std::vector<std::uint8_t> nodes_of(const Network& network,
                                   const std::vector<std::uint32_t>& entries);

}  // namespace loopwright::circuit
