// How winding a line is: the change of heading along it, per kilometre.
//
// Rules: private to mark.
#pragma once

#include <span>

#include "loopwright/base/point.hpp"

namespace loopwright::mark {

/// Degrees per kilometre; 0 for a line shorter than what can be judged.
double bendiness_deg_per_km(std::span<const Point> line);

/// True when bends, not the limit, decide the speed.
bool is_winding(std::span<const Point> line);

}  // namespace loopwright::mark
