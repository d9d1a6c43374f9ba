// The strongly connected components of a local graph: from each state of one every other can be come to.
//
//   const auto part = strong_parts(graph);   part[v] == part[w]: one can drive from v to w and back
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/reach/local_graph.hpp"

namespace loopwright::reach {

/// The number of each vertex's component, from 0 on, none left out. By Boost.Graph (Tarjan 1972).
std::vector<std::uint32_t> strong_parts(const LocalGraph& graph);

}  // namespace loopwright::reach
