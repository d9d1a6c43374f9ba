// What the summary of a loop says of its parts and of who drives.
#pragma once

#include <iosfwd>
#include <string>

#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// A block of lines for each part, with what it got; a line each for what the instructor drives. Nothing for a loop
/// that has neither.
void print_lesson(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop);

/// "you drive to Mill Road: 6 min"; empty when the learner sets off from the door.
std::string drive_out_words(const wish::Loop& loop);
/// "you drive back from Mill Road: 6 min"; empty when the learner drives home.
std::string drive_back_words(const wish::Loop& loop);

}  // namespace loopwright::command
