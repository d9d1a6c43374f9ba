// Which ways a car may take a road at which hours, by the one-way keys with conditions.
#pragma once

#include <string>

#include "loopwright/mark/on_hours.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {

/// A road's two directions by its one-way keys alone.
struct OneWayHours {
  Switched along, against;  ///< on: traffic may go that way
  std::string source;       ///< the keys with conditions that bind a car; empty: there are none
};
OneWayHours one_way_hours(const Tags& tags, road::RoadClass road_class);

}  // namespace loopwright::mark
