// A plain full Dijkstra sweep by Boost.Graph's own dijkstra_shortest_paths over an area's turn graph:
// the measure that search times are told in.
#pragma once

#include <cstddef>

#include "loopwright/base/ids.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::bench {

struct SweepTime {
  double ms = 0;            ///< median of several runs, the graph built beforehand
  std::size_t reached = 0;  ///< states
};

/// From one state over all that may be driven; the cost of an edge is the turn's and its stretch's.
SweepTime time_plain_sweep(const road::Roads& roads, const reach::Costs& costs, StateId from);

}  // namespace loopwright::bench
