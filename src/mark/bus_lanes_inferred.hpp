// Bus lanes of which only a key about something else tells.
//
// Rules: private to mark.
#pragma once

#include <vector>

#include "bus_lane_families.hpp"

namespace loopwright::mark {

/// cycleway:left=share_busway, psv=lane: a lane is there, its hours aren't mapped. In doubt, all of
/// them. Rules: for roads of which no family of lane keys tells.
std::vector<BusLaneFact> inferred_bus_lanes(const LaneRoad& road);

}  // namespace loopwright::mark
