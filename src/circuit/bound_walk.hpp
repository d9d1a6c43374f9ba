// Walks from the programme's amounts.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "circuit/bound_network.hpp"
#include "loopwright/circuit/problem.hpp"

namespace loopwright::circuit {

/// The walk that whole amounts of the arcs make: any order of them takes the same time. What isn't
/// connected to home is left out. Waits until each pass begins spacing_ms after the last.
Walk walk_of(const Problem& problem, const Network& network, std::span<const double> amounts,
             std::int64_t spacing_ms);

/// By row of passes, 1 for those the amounts use.
std::vector<std::uint8_t> used_passes(const Problem& problem, const Network& network,
                                      std::span<const double> amounts);

}  // namespace loopwright::circuit
