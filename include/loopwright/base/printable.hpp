// Text that strangers wrote, made safe to print: map tags and files may hold anything.
//
//   out << printable(tags.get("name"));   // "Mo-Fr\x1b[2J" -> "Mo-Fr\uFFFD[2J"
#pragma once

#include <string>
#include <string_view>

namespace loopwright {

/// A text of the map or of a file as it may be printed on a terminal: line ends and tabs as a blank;
/// other control characters, marks that turn the direction of writing, and bytes that aren't UTF-8
/// as U+FFFD. What is shielded is given back. All else stays byte for byte.
/// Source: Unicode 15.0, 23.1 (control codes), 23.2 (line separators), UAX #9 (direction).
std::string printable(std::string_view text);

/// A text with each of some printable ASCII characters as one of Unicode's private use, which means nothing
/// to whoever reads the text by a grammar, and which printable() gives back as it was.
std::string shielded(std::string_view text, std::string_view characters);

}  // namespace loopwright
