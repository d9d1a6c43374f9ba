// Rows that every walk keeps and the programme's amounts don't.
//
//   Cutter cutter(nodes, formulation);   std::vector<Row> rows = cutter.violated(amounts);
//
// Rules: the worst first, at most 200 (SEARCH.md); none: the amounts are connected to home as far as what
// counts goes.
#pragma once

#include <span>
#include <vector>

#include "circuit/bound_formulation.hpp"
#include "circuit/bound_inflow.hpp"

namespace loopwright::circuit {

class Cutter {
 public:
  /// Rules: all outlive it.
  Cutter(const ClusterNodes& nodes, const Formulation& formulation);

  std::vector<Row> violated(std::span<const double> amounts);

 private:
  const ClusterNodes& nodes_;
  const Formulation& formulation_;
  Inflow inflow_;
};

}  // namespace loopwright::circuit
