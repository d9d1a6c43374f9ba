// What the summary of a loop says of its parts and of who drives.
#pragma once

#include <iosfwd>

#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// A block of lines for each part, with what it got; a line each for what the instructor drives. Nothing for a loop
/// that has neither.
void print_lesson(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop);

}  // namespace loopwright::command
