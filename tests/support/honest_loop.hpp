// A drive over a drawn town written down as a loop, all of it true: stretches, times, limits,
// passes, and what was asked for.
//
//   const wish::Answer answer = honest_answer(town, "ABCDAB", {"roundabout=1"});
//   say::say_loop(town.roads(), answer.loops[0]);
//
// Rules: letters are nodes of the graph in driving order; the first two and the last two name the
// same piece, and home is its middle. Start: Saturday 28 November 2026, 15:00 UTC. Throws
// std::invalid_argument when the drive has a turn that isn't legal. Bus lanes are left to the test.
#pragma once

#include <initializer_list>
#include <string_view>

#include "loopwright/find/passes.hpp"
#include "loopwright/wish/wish.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {

wish::Answer honest_answer(const BuiltTown& town, std::string_view letters,
                           std::initializer_list<std::string_view> wants = {});

/// The same of any drive; home is where it starts.
wish::Answer honest_answer(const road::Roads& roads, const find::Drive& drive,
                           std::initializer_list<std::string_view> wants = {});

}  // namespace loopwright::test
