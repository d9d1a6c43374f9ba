// What lies on and beside the way: its ends, level crossings, places to pull up, towns and villages.
#pragma once

#include "draw/map_of.hpp"
#include "draw/taken.hpp"

namespace loopwright::draw {

/// True when the word for the start found room.
bool draw_marks(Picture& page, const MapOf& map, Taken& taken);

}  // namespace loopwright::draw
