// A short text that changes when a lesson, or a pupil's whole record, does.
//
//   if (mark_of(lesson_now) != mark_as_read) …   // somebody logged, moved or planned it meanwhile
//
// Rules: pure; equal for equal records, and different for others but by a chance nobody meets (128 bits of XXH3). A loop
// file doesn't count: it is taken away by a later log, and what hangs on it does. Not a secret, and no proof against
// somebody who wants two records to look alike.
#pragma once

#include <span>
#include <string>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/pupil.hpp"

namespace loopwright::book {

/// 32 hex digits.
std::string mark_of(const Lesson& lesson);
/// Of all that a proposal is made from. lessons: in any order.
std::string mark_of(const Pupil& pupil, std::span<const Lesson> lessons);

}  // namespace loopwright::book
