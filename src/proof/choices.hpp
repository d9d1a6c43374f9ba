// The junctions of a drive at which its driver could go another way, read from the area alone.
//
// Rules: of a drive whose rows and passes hold. What a choice and the road ahead are: DEVELOPERS.md,
// Independent driving.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "proof/checks.hpp"

namespace loopwright::proof {

struct Choice {
  std::size_t from = 0, to = 0;  ///< rows outside the junction: into it, and out of it
  bool road_ahead = true;        ///< nothing need be told
  std::string told;              ///< what would be; empty: it couldn't be found in advance
  std::vector<StretchId> other_ways;
};

/// All of a drive, in order.
std::vector<Choice> choices_of(const Drive& drive);

/// By row: one can't begin or end there, since it lies inside a junction.
std::vector<bool> inside_junctions(const Drive& drive);

/// Signs there, or its road number, lead to that place or number.
bool leads_to(const road::Roads& roads, StretchId stretch, std::string_view name);
/// All that they lead to.
std::vector<std::string> led_to(const road::Roads& roads, StretchId stretch);

}  // namespace loopwright::proof
