// Sets of nodes that the amounts hold together: candidates for cuts, found without a flow.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "circuit/bound_network.hpp"

namespace loopwright::circuit {

/// Nodes joined along arcs by falling flow, home and the end left out: each set that arises, once.
std::vector<std::vector<std::uint32_t>> held_together(const Network& network,
                                                      std::span<const double> amounts);

}  // namespace loopwright::circuit
