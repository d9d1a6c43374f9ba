// What the instructor should mind of a lesson that is planned for a pupil: lines that begin with "note: ", told before
// anything is searched. The page shows these lines (web/keep.ts).
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "command/wish_words.hpp"
#include "loopwright/book/pupil.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// Everything that the words want, that of parts too. Throws UsageError.
std::vector<wish::Want> wants_said(const WishWords& words);

/// What is asked for by name beats what the book keeps off a pupil in general: the want that does; null: none.
const wish::Want* beats(const std::vector<wish::Want>& wants, road::Kind kept_off);

/// Tells what is kept off for the pupil and asked for all the same, and what to do.
void tell_given_way(std::ostream& out, const book::Pupil& pupil,
                    const std::vector<wish::Want>& wants);

}  // namespace loopwright::command
