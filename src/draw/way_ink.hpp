// The way in thick ink: how one sees where it goes, opens for numbers and ends.
#pragma once

#include "draw/map_way.hpp"
#include "loopwright/draw/picture.hpp"

namespace loopwright::draw {

/// Widths of the way's ink, where it begins to swell and where it has.
inline constexpr double way_thin = 0.7, way_thick = 1.9;

/// What of the way lies in a box, swelling in the direction one drives. Ground driven again the same
/// way is drawn once.
void draw_way(Picture& map, const Way& way, const Box& box);

/// Half the width of the way's opening for a number.
double opening_for(const std::string& text);
/// Opens the way around a length along it and writes a number there, upright.
void draw_number(Picture& map, const Way& way, double at, const std::string& text);

/// A sample of the swelling line, from left to right; about 16 mm.
void draw_swelling(Picture& map, Spot from, double length);

/// The bar across a line at its end.
void draw_bar(Picture& map, Spot at, Spot direction);

}  // namespace loopwright::draw
