// The kinds found at junctions where somebody gives way, each explained in its own .cpp.
//
// Rules: private to mark. Each appends places and chances to the draft; needs the piece facts,
// roundabouts, minis and signals.
#pragma once

#include <span>

#include "plain_junctions.hpp"

namespace loopwright::mark {

using Junctions = std::span<const PlainJunction>;

void mark_acute_junctions(Draft& draft, const road::Roads& roads, Junctions junctions);
void mark_staggered_junctions(Draft& draft, const road::Roads& roads, Junctions junctions);
void mark_cycle_lane_mouths(Draft& draft, const road::Roads& roads, Junctions junctions);

void mark_stop_lines(Draft& draft);
void mark_advanced_stop_lines(Draft& draft);
void mark_box_junctions(Draft& draft);
void mark_lane_merges(Draft& draft);

}  // namespace loopwright::mark
