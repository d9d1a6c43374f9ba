// A settlement's limit on the roads of the plan that pass through it.
#pragma once

#include <vector>

#include "county/drawing.hpp"

namespace loopwright::county {

/// Whether a line is a road of the kind that settlements lie along: tertiary and the like, on the
/// ground, of one carriageway.
bool through(const Line& line);

/// Cuts the roads of the national limit that pass within near_m of the middle where they cross the
/// outline, and puts the tags maxspeed, maxspeed:type and lit of `limits` on what lies within.
void limit_within(Drawing& county, const std::vector<Spot>& outline, Spot middle, double near_m,
                  const Tags& limits);

}  // namespace loopwright::county
