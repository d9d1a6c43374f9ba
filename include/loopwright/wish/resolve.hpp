// Ties a loop read from a file to the area at hand: finds the stretch each row names.
//
//   resolve(roads, loop);   // every loop.stretches[i].stretch, and those of its ways home, are known
//
// Rules: throws InputError naming the first row that this area doesn't have. It checks names only;
// whether the drive is legal is for the proof.
#pragma once

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

/// The stretch that a row names; none when the area has no such piece.
StretchId find_stretch(const road::Roads& roads, const LoopStretch& row);

void resolve(const road::Roads& roads, Loop& loop);

}  // namespace loopwright::wish
