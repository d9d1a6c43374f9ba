// The words an option takes, read from its help.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::command {

/// "pdf: a4 or a5 (default: a4)" lists a4 and a5. Two words at least, each of letters, digits and hyphens, parted by
/// commas and a last "or", up to the end, a blank and a bracket, or a semicolon; what is before a colon, and "only",
/// don't count. Empty when the help is no such list.
std::vector<std::string> choices_in(std::string_view help);

}  // namespace loopwright::command
