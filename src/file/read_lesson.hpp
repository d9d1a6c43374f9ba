// The parts of a lesson and who drives, of a wish and of a loop, read from JSON. Older files have none.
//
// Rules: each throws InputError naming the member that isn't as it should be.
#pragma once

#include "file/read_drive.hpp"

namespace loopwright::file::values {

/// Members "parts", "easy_first", "drive_out" and "drive_back" of a wish.
void read_lesson(const Cursor& value, wish::Wish& wish);
/// Members "parts" and "practice" of a loop. Rules: its stretches and passes are read.
void read_lesson(const Cursor& value, wish::Loop& loop);

}  // namespace loopwright::file::values
