// What is to be looked at on the ground, of a subject.
#pragma once

#include <vector>

#include "card/sections.hpp"
#include "loopwright/card/ground.hpp"

namespace loopwright::card {

/// Those of `subject.timed` first, one each in its order; what is never for us has no facts, since there is nothing to read.
std::vector<GroundItem> ground_items(const Subject& subject);

/// The list on the sheet; empty when nobody says what was seen, or nothing is to be looked at.
Section ground_of(const Subject& subject);

}  // namespace loopwright::card
