// Lines that fit a terminal: folded at blanks, what goes on set in.
#pragma once

#include <cstddef>
#include <iosfwd>
#include <string_view>

namespace loopwright::command {

/// Prints one line, or several of at most 80 columns: the first set in by `indent` blanks, the
/// others by two more. A word that is longer stays whole. Rules: UTF-8, a character a column.
/// The text may be the map's: control characters in it are not printed (base/printable.hpp).
void print_folded(std::ostream& out, std::size_t indent, std::string_view text);

/// Bytes of the first so many characters of a UTF-8 text.
std::size_t bytes_of(std::string_view text, std::size_t characters);

}  // namespace loopwright::command
