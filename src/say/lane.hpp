// The lane to be in before a junction, as the lane arrows of the map tell it.
#pragma once

#include <string>

#include "loopwright/say/words.hpp"
#include "say/moments.hpp"

namespace loopwright::say {

/// "left lane of two", "either lane"; empty where no arrows are mapped, where there is one lane, and
/// where they don't tell: nothing is said as certain that the map isn't sure of.
std::string lane_for(const Drive& drive, const Moment& moment, const Words& words);

}  // namespace loopwright::say
