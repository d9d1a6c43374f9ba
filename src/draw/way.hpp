// Signs that several pictures share: the car's way in thick ink, ending in a bar; a railway; lights.
#pragma once

#include "draw/lines.hpp"

namespace loopwright::draw {

/// The bar is as wide as `bar`, across the end of the way. Paper is left blank along both sides.
void draw_way(Picture& picture, const Line& way, double width, double bar);

/// Two rails and their sleepers, `length` long, in the middle of it at `at`.
void draw_rails(Picture& picture, Spot at, Spot direction, double length, double gauge);

/// Three lamps one below the other, without colours, `height` tall with the middle at `at`.
void draw_lamps(Picture& picture, Spot at, double height);

}  // namespace loopwright::draw
