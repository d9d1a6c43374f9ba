// Turns a drive through the graph into the loop a user sees: names, times, passes, bus lanes.
#pragma once

#include "find/caps.hpp"
#include "find/passes.hpp"
#include "loopwright/pace/pace.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// Rules: consecutive states are joined by a turn of the area.
wish::Loop describe(const road::Roads& roads, const pace::Pace& pace, const Drive& drive,
                    const wish::Wish& wish);

/// Passes that count for a want: at most the cap for each place.
int passes_counting(std::span<const PlacePass> passes, const wish::Want& want, const Caps& caps);

/// Road driven a second time, in either direction, in metres.
double metres_twice(const road::Roads& roads, const Drive& drive);

/// The part of both loops' length that they share by way and direction, their first and last
/// exempt_m not counted; 0 to 1, of the shorter rest.
double shared_part(const wish::Loop& a, const wish::Loop& b, double exempt_m);

}  // namespace loopwright::find
