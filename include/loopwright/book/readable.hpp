// All that the book holds on a pupil, in words: what export_pupil gives to machines.
//
//   card::write_record(readable_record(book, "WREN"));
//
// Rules: every table of the book has its section when it has rows of the pupil. Long texts (a loop file, a recording) are
// named with their length, passes and streets counted: whole they are in the JSON. Source: UK GDPR article 12(1) (in an
// intelligible form, in plain language) and 15.
#pragma once

#include <string_view>
#include <vector>

#include "loopwright/book/book.hpp"
#include "loopwright/wish/progress_sheet.hpp"

namespace loopwright::book {

/// Throws InputError when there is no such pupil.
std::vector<wish::ProgressSheet::Section> readable_record(const Book& book, std::string_view code);

}  // namespace loopwright::book
