// Many texts at once, so that anyone can hold our answers against another reader's.
#pragma once

#include <iosfwd>

#include "command/hours_place.hpp"

namespace loopwright::command {

/// Lines "region TAB text TAB local time" come back with a column more: O in force, C not, U
/// unknown, ERR when one of the three can't be read. How many of these: the return value.
/// Rules: a line with signs that can't be printed comes back with U+FFFD in their place, and ERR.
std::size_t answer_batch(std::istream& in, std::ostream& out, const HoursPlace& place);

}  // namespace loopwright::command
