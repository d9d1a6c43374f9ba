// Turning the car round at the end of a road: where a wish lets a drive do so, and where a drive does.
//
//   if (!may_turn_round(wish, roads, back)) …   // back: the stretch one would drive back on
//
// Why: a turn in the road is a manoeuvre that is taught (Highway Code 200 to 203); a drive that needs one unasked is none
// for a beginner, and at the end of a service road the land is mostly somebody's (common practice, no source).
#pragma once

#include <cstddef>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

/// True of a wish that asks for turn-in-road, or welcomes it: then the car may be turned round where a street ends.
bool wants_turning_round(const Wish& wish);

/// True when something to be practised is welcome. Turning round, which is only let, has no worth.
bool welcomes_practice(const Wish& wish);

/// True when a drive of the wish may go back on this stretch from the dead end at which it begins: a drive of one's own
/// (through points) at any, one that wants turning round at the end of any road but a service road, no other.
bool may_turn_round(const Wish& wish, const road::Roads& roads, StretchId back);

/// The rows of a loop that go back on the row before them, from its end: where the car is turned round.
std::vector<std::size_t> turns_round(const Loop& loop);

}  // namespace loopwright::wish
