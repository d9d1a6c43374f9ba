// What a sheet says of the light: lights to be switched on, and roads driven into a low sun.
#pragma once

#include "card/sections.hpp"

namespace loopwright::card {

/// Sunrise or sunset within the drive, or dark all through it; the rows driven into a low sun. Without
/// lines by day, under a high sun, or where nothing is known of the sun.
/// Source: Highway Code rule 113 (sidelights between sunset and sunrise).
Section light_of(const Subject& subject);

}  // namespace loopwright::card
