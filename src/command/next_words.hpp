// What the book proposes for the next lesson, in words: shared by `lesson next` and by the proposals of the night.
#pragma once

#include <iosfwd>
#include <optional>
#include <string>

#include "command/ground.hpp"
#include "command/lesson_words_of_pupil.hpp"
#include "command/next_plan.hpp"
#include "loopwright/book/book.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupil.hpp"

namespace loopwright::command {

/// What a lesson from the pupil's door can have on that day at ten; none without a map. Which hour hardly matters here:
/// `lesson plan --next` asks for its own. Throws as practices_for.
std::optional<WhatIsThere> there_on(const book::Pupil& pupil, const PupilRecord& record,
                                    const AreaTexts& area, Date day);

/// The words of its wish as a file, for 'lesson plan --wish' and 'loops --wish': all that a lesson of an hour is planned by.
/// Without topics it asks for nothing, without a home in the book it names none.
std::string wish_file_of(const book::Proposal& next, const book::Pupil& pupil,
                         const PupilRecord& record);

/// Goal, topics with their reasons, and the command that plans it on the area of that name; empty: none is named.
/// first: of those ahead, what else to think of is told once.
void print_proposal(std::ostream& out, const std::string& code, const book::Proposal& next,
                    bool first, const std::string& area);

}  // namespace loopwright::command
