// The option --book, and the book it names.
#pragma once

#include <string>
#include <string_view>

#include "command/options.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/book/book.hpp"
#include "loopwright/book/pupil.hpp"
#include "loopwright/book/scheme.hpp"

namespace loopwright::command {

/// The clock of a book's days: an instructor's is Great Britain's, and without an area nothing else tells one.
inline constexpr std::string_view book_zone = "Europe/London";

void add_book(Options& app, std::string& book);

/// Opens the book of --book, or the usual one (book::usual_file), whose folder is made when need be. Throws InputError.
book::Book open_book(const std::string& option, book::Opening opening);

/// A pupil's code as typed. Throws UsageError when it can't be one.
std::string pupil_code(std::string_view option, const std::string& text);

/// The scheme by which a pupil's skills are recorded. Throws InputError when this program doesn't know it.
const book::Scheme& scheme_kept(const book::Pupil& pupil);

/// The day of --today, or today on the clock of Great Britain. Throws UsageError.
Date today_of(const std::string& option);

}  // namespace loopwright::command
