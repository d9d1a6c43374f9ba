// Reads a published orienteering instance as a circuit problem.
//
// Format: TSPLIB 95 (Reinelt, "TSPLIB 95", Universität Heidelberg) with a COST_LIMIT line, a
// NODE_SCORE_SECTION and a DEPOT_SECTION; distances EUC_2D, ATT and GEO as TSPLIB rounds them, or
// EXPLICIT as UPPER_ROW or LOWER_DIAG_ROW.
// Rules: a node is an entry and an exit, its score the worth of its first pass; the depot is such a node
// too (the published scores count it), and home and end lie there.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "loopwright/circuit/problem.hpp"

namespace loopwright::test {

/// Throws std::runtime_error with file and reason when the file is not of that format.
circuit::Problem read_orienteering(const std::filesystem::path& file);

/// One row of best-known.tsv.
struct Known {
  std::string instance;
  std::int64_t heuristic = 0;
  std::int64_t optimum = 0;  ///< 0: not proved
};

std::vector<Known> read_known(const std::filesystem::path& table);

}  // namespace loopwright::test
