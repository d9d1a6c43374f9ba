// Where the numbers stand in the way.
#pragma once

#include <string>
#include <vector>

#include "draw/map_way.hpp"
#include "draw/taken.hpp"
#include "loopwright/draw/overview.hpp"

namespace loopwright::draw {

struct SetNumber {
  Numbered number;
  double at = 0;       ///< along the way
  bool apart = false;  ///< it had to move before an earlier junction
};

struct SetNumbers {
  std::vector<SetNumber> set;      ///< from the last to the first
  std::vector<Numbered> left_out;  ///< those that found no room
};

/// Sets each number before its junction, as near as there is room, in driving order. Numbers of
/// junctions that aren't on the map are neither set nor left out.
SetNumbers set_numbers(const Way& way, const std::vector<Numbered>& numbers, const Box& map,
                       Taken& taken);

}  // namespace loopwright::draw
