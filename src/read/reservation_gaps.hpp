// Ways round inside a junction: through a gap in a central reservation, from one half of a road back
// along the other, and in a circle.
#pragma once

#include <vector>

#include "via_walks.hpp"

namespace loopwright::read {

/// Each way from a stretch of one half, over the gap, into a stretch of the other half, and each that
/// comes to its first stretch again: two stretches or more. No map forbids it and no lesson makes
/// it: it is a U-turn before traffic that comes fast (Highway Code 173 and 200 to 203), and at lights
/// it has no name to be told by.
/// Rules: nodes, pieces, stretches, node_first and node_out are done; the halves' tip, where no gap
/// lies between, is the turn table's.
std::vector<StretchPath> ways_round_a_gap(const road::Roads& roads);

}  // namespace loopwright::read
