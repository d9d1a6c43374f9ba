// Words as near to a spot as there is room, or led to it by a line.
#pragma once

#include <string>

#include "draw/taken.hpp"

namespace loopwright::draw {

/// Writes a line of words beside a spot, `gap` from it or up to 8 mm further, or on it when the gap is
/// 0, and takes the place; false when there is no room.
bool write_near(Picture& page, Taken& taken, Spot spot, const Label& words, double gap);

/// The same further off, up to `furthest`, with a thin line between the words and the spot that touches
/// nothing else.
bool write_led(Picture& page, Taken& taken, Spot spot, const Label& words, double furthest);

}  // namespace loopwright::draw
