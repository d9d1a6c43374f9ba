// The legal moves from the end of each state.
#pragma once

#include "loopwright/mark/draft.hpp"
#include "via_memory.hpp"

namespace loopwright::read {

/// Fills turn_first and turns (controls are for the marking rules) from the drivable stretches, the
/// node flags and the turn rules. Rules: tables.copies is memory.copies().
void lay_out_turns(mark::Draft& draft, const ViaMemory& memory);

}  // namespace loopwright::read
