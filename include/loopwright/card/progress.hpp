// A pupil's progress on paper.
//
//   store::write_whole("wren.pdf", card::write_progress(sheet));
//
// Rules: every page of progress says that it ranks nobody and promises nothing.
#pragma once

#include <string>

#include "loopwright/wish/progress_sheet.hpp"

namespace loopwright::card {

/// A PDF file, A4. Rules: it has a section. Throws InputError when it can't be drawn.
std::string write_progress(const wish::ProgressSheet& sheet);

/// All that is kept on a pupil, for the pupil. A PDF file, A4. Rules and errors as of write_progress.
std::string write_record(const wish::ProgressSheet& sheet);

}  // namespace loopwright::card
