// What the map says of grown streets: limits, lamps, widths, parked cars.
#pragma once

#include "county/drawing.hpp"
#include "county/grow.hpp"

namespace loopwright::county {

/// 30 mph by street lamps, where the tags say nothing of a limit.
void add_town_limit(Tags& tags);
/// A signed 30 with lamps, where the tags say nothing of a limit.
void add_village_limit(Tags& tags);
/// The national limit on an unlit road without a reservation.
void add_national_limit(Tags& tags);
/// Class, width and parked cars of one street of a style.
Tags street_tags(Style style, bool closed, double length_m, Dice& dice);

}  // namespace loopwright::county
