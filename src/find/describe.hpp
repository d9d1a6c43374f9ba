// Turns a drive through the graph into the loop a user sees: names, times, passes, bus lanes.
#pragma once

#include "find/caps.hpp"
#include "loopwright/find/passes.hpp"
#include "loopwright/pace/pace.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

struct Ground;

/// What is behind the driver at the start of each stretch and, last, at the end; stops not counted.
/// Rules: consecutive states are joined by a turn of the area.
std::vector<pace::Spell> spells_before(const road::Roads& roads, const pace::Pace& pace,
                                       const Drive& drive);

/// The times of a drive alone: its start, its rows with their stretch and arrivals, and its seconds; what
/// hours are asked by. Rules: as spells_before.
wish::Loop timed(const Ground& ground, const Drive& drive);

/// One row of a drive, all but its times.
wish::LoopStretch row_of(const Ground& ground, const Drive& drive, std::size_t i);

/// The wait at a turn. Rules: the area has it.
pace::Spell turn_spell(const Ground& ground, StateId from, StateId to);

/// Gives each pass of bus lanes its verdict. Rules: the loop is timed, of the drive that makes the passes.
void judge_lanes(const Ground& ground, const wish::Loop& loop, std::span<PlacePass> passes);

/// Rules: consecutive states are joined by a turn of the area.
wish::Loop describe(const Ground& ground, const Drive& drive);

/// Road driven a second time, in either direction, in metres; only of pieces with all these flags.
double metres_twice(const road::Roads& roads, const Drive& drive, std::uint32_t piece_flags = 0);

}  // namespace loopwright::find
