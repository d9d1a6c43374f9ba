// The parts of a lesson and who drives, as JSON; only what there is to say.
#pragma once

#include "file/write_values.hpp"

namespace loopwright::file::values {

/// Members "parts", "easy_first", "drive_out" and "drive_back" of a wish.
void write_lesson(const wish::Wish& wish, Json& result);
/// Members "parts" and "practice" of a loop.
void write_lesson(const wish::Loop& loop, Json& result);

}  // namespace loopwright::file::values
