// A circuit problem as a network of flow: every walk is one unit from home to the end.
//
//   Network n = plain_network(problem);             // legs as they are, or as spacing needs
//   Network n = spaced_network(problem, 120'000);   // passes of worth begin so far apart
//
// Rules: nodes from 0 are the entries, from entry_count what lies behind passes, then home and the end. A network of passes that
// all must begin spacing_ms apart holds each walk's counted passes alone, legs leading through the rest.
// Why arcs are left out: an arc no quicker than two quicker ones through a pass costs the programme time
// and gives no walk more value, since a pass on the way never lessens it.
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

#include "loopwright/circuit/problem.hpp"

namespace loopwright::circuit {

inline constexpr std::uint32_t no_pass = std::numeric_limits<std::uint32_t>::max();

struct Arc {
  std::uint32_t from = 0, to = 0;
  std::int64_t ms = 0;
  std::uint32_t pass = no_pass;  ///< row of the pass this arc drives
  std::int64_t most = 0;         ///< some best walk uses it so often at most
};

struct Network {
  std::uint32_t entry_count = 0, node_count = 0, home = 0, end = 0;
  bool spaced = false;  ///< legs are as long as the spacing
  std::vector<Arc> arcs;
};

/// Between each pass and the next the leg (legs_between_counted), other waits left out. Passes in no group are left out.
Network plain_network(const Problem& problem);

/// From the beginning of each pass to the next's at least spacing_ms. Rules: spacing_ms > 0.
Network spaced_network(const Problem& problem, std::int64_t spacing_ms);

/// What of the problem matters to one goal's worth: its groups, passes in them, no `least`.
Problem worth_of(const Problem& problem, std::uint32_t goal);

}  // namespace loopwright::circuit
