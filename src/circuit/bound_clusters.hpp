// Entries nested by how quickly one gets from one to the other and back: the sets that cuts and branches
// speak of.
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

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
  /// The smallest that holds both.
  [[nodiscard]] std::uint32_t common(std::uint32_t a, std::uint32_t b) const;
};

/// Entries that share an exit stay together (a place); places are joined two by two, the nearest first.
Clusters nested(const Problem& problem);

}  // namespace loopwright::circuit
