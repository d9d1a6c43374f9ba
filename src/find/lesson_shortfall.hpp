// Why a lesson in parts falls short, in plain words.
#pragma once

#include <optional>
#include <vector>

#include "find/lesson_search.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// No lesson was found at all. Rules: the search has run.
wish::Shortfall explain_no_lesson(const Ground& lesson, const std::vector<LessonEnds>& ends,
                                  const LessonSearch& search);

/// Adds the wants that the first loop lacks, part by part, and what of a loop isn't easy that was to be.
void add_lacking(const Ground& lesson, const std::vector<wish::Loop>& loops,
                 std::optional<wish::Shortfall>& shortfall);

}  // namespace loopwright::find
