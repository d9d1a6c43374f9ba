// What a sheet says of level crossings: their kind, as far as it is mapped, and how long a wait may be.
#pragma once

#include "card/sections.hpp"

namespace loopwright::card {

/// By row, each kind in words; without lines when there is none.
Section crossings_of(const Subject& subject);

}  // namespace loopwright::card
