// The flow into a set of nodes, written with as few columns as it can be.
//
//   Inflow inflow(network);   inflow.add(nodes, -1, row);
//
// Rules: the set holds neither home nor the end. One object serves one thread.
// Why two ways: small sets have many ways in and few inside; as what enters a node leaves it, the ways in are
// all that leaves the set's nodes less what stays inside.
#pragma once

#include <cstdint>
#include <vector>

#include "circuit/bound_network.hpp"
#include "circuit/bound_programme.hpp"

namespace loopwright::circuit {

class Inflow {
 public:
  explicit Inflow(const Network& network);

  /// Adds the flow into these nodes (1 by node), times `factor`; columns of the row may be met again.
  void add(const std::vector<std::uint8_t>& nodes, double factor, Row& row);

 private:
  void collect(std::uint32_t arc, int times);

  const Network& network_;
  std::vector<std::vector<std::uint32_t>> in_, out_;  ///< arcs by node
  std::vector<int> times_;                            ///< by arc, while a row is made
  std::vector<std::uint32_t> met_;
};

}  // namespace loopwright::circuit
