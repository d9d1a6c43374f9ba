// Where one stops at a pull-up place, and what to look at before.
//
//   what_to_check(place) == "check lines, signs and drives, parked cars"
//
// Source: Highway Code rules 238, 240 and 243, and the tags behind the place's flags.
#pragma once

#include <string>

#include "loopwright/road/roads.hpp"

namespace loopwright::lanes {

/// Its middle, in metres from where the stretch is entered: clear of what ends it at either side.
double stop_at_m(const road::PullUp& place);

std::string what_to_check(const road::PullUp& place);

}  // namespace loopwright::lanes
