// Small reading of texts that tables, tags and the command line share.
//
//   for (std::string_view part : split("a; b", ';')) use(part);   // "a", "b"
//
// Rules: ASCII only; views point into the text given. Numbers are read whole or not at all, with
// '.' as the decimal point whatever the system's language.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright {

/// Without spaces, tabs and line ends at both ends.
std::string_view trim(std::string_view text);

/// The parts between separators, trimmed; a text without one is a single part, "" is one too.
std::vector<std::string_view> split(std::string_view text, char separator);

/// A to Z as a to z; other bytes stay.
std::string lower(std::string_view text);

/// "42", "-7"; empty when anything else is in the text.
std::optional<int> read_int(std::string_view text);
/// The same for numbers as large as OSM ids.
std::optional<std::int64_t> read_int64(std::string_view text);

/// "42", "-7.5"; empty when anything else is in the text, or it isn't finite.
std::optional<double> read_number(std::string_view text);

}  // namespace loopwright
