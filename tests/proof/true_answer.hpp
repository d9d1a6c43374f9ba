// An answer that tells nothing but the truth about a drive along lettered nodes, made without find,
// so that a proof can be shown a true answer and then one lie in it.
//
//   wish::Answer answer = true_answer(town, "ABCDAB");   // home in the middle of AB
//   answer.loops[0].stretches[2].way = 9;                // a lie
//
// The first and the last two letters are the piece home lies on, half of which is driven each time.
// The drive needn't be legal: where the area has no such turn no delay is counted. Minutes are
// those the drive fills; it throws std::invalid_argument when no whole number of them does.
// Rules: where a road was driven in parts before, one of them holds the others.
#pragma once

#include <string_view>

#include "loopwright/wish/wish.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {

/// wish: its wants, avoids, level, through, and its start when it has one; home, minutes and a start
/// (Saturday 28 November 2026, 15:00) are filled in.
wish::Answer true_answer(const BuiltTown& town, std::string_view letters, wish::Wish wish = {});

/// One loop, for an answer that holds several.
wish::Loop true_loop(const BuiltTown& town, std::string_view letters, const wish::Wish& wish);

}  // namespace loopwright::test
