// What a finished loop says of places to pull up: the planned ones, the next after each hard pass, and
// when one must drive on from each.
//
//   add_pull_ups(ground, drive, loop);
//
// Rules: the loop is described, of this very drive. What words mean: wish/stops.hpp.
#pragma once

#include <string>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/find/passes.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// Fills pull_ups and stops_after.
void add_pull_ups(const Ground& ground, const Drive& drive, wish::Loop& loop);

/// Adds to what falls short a sentence for each planned stop that a loop's drive has no place for.
void tell_without_place(const Ground& ground, const Drive& drive, const wish::Loop& loop,
                        std::optional<wish::Shortfall>& shortfall);

}  // namespace loopwright::find
