// What else the ways through a signalled junction are worth: a lane of one's own for the turn, and
// lanes that fall behind the lights.
//
// Rules: private to mark. The ways are those of one cluster of lights, each with its movement.
#pragma once

#include <span>

#include "passing.hpp"

namespace loopwright::mark {

struct LitWay {
  Path path;
  road::Movement movement = road::Movement::none;
};

/// filter_lanes.cpp
void mark_filter_lanes(Draft& draft, const road::Roads& roads, const Spot& spot,
                       std::span<const LitWay> ways);
/// lane_merges.cpp
void mark_merges_behind_lights(Draft& draft, const road::Roads& roads, const Spot& spot,
                               std::span<const LitWay> ways);

}  // namespace loopwright::mark
