// Rows that every walk keeps and the programme's amounts don't.
//
//   std::vector<Row> rows = violated_cuts(network, formulation, amounts);
//
// Rules: the worst first, at most 200 (SEARCH.md); none: the amounts are connected to home as far as what
// counts goes.
#pragma once

#include <span>
#include <vector>

#include "circuit/bound_formulation.hpp"

namespace loopwright::circuit {

std::vector<Row> violated_cuts(const Network& network, const Formulation& formulation,
                               std::span<const double> amounts);

}  // namespace loopwright::circuit
