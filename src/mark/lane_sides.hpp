// Keys that name a side of the way: which traffic uses that side, and which side its drivers call it.
//
// Rules: private to mark. Sides of the way are seen as its nodes run.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "bus_lane_families.hpp"

namespace loopwright::mark {

/// Which way the traffic on one side of the way goes.
road::LaneDirection flow_on(road::LaneSide way_side, const LaneRoad& road);

/// A side of the way as those see it who drive in that direction.
road::LaneSide side_seen(road::LaneSide way_side, road::LaneDirection direction);

struct SidedKey {
  std::string key;
  road::LaneSide way_side;
};
/// "busway:left" … "busway:both", "busway", those of one side first, each once for each side it speaks of;
/// of a one-way road the plain key speaks of an unknown one.
std::vector<SidedKey> sided_keys(const LaneRoad& road, std::string_view key);

}  // namespace loopwright::mark
