// The runs of road that have a rule file of their own.
//
// Rules: private to mark. Each returns members that may be driven, by stretch, each once.
#pragma once

#include "run_kinds.hpp"

namespace loopwright::mark {

RunFamily cycle_lane_runs(Draft& draft);                ///< a cycle lane on our side
RunFamily slip_road_runs(Draft& draft);                 ///< leaving or joining at speed
RunFamily tram_runs(Draft& draft);                      ///< tram rails in the road
std::vector<RunFamily> school_runs(Draft& draft);       ///< one family a school
std::vector<RunFamily> independent_runs(Draft& draft);  ///< one family a road number or place

}  // namespace loopwright::mark
