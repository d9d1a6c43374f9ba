// Text of the map as it is read to people.
#pragma once

#include <string>
#include <string_view>

#include "loopwright/base/printable.hpp"

namespace loopwright::hours {

/// In curly quotation marks, without what can't be printed.
inline std::string quoted(std::string_view text) {
  return "\u201c" + printable(text) + "\u201d";
}

}  // namespace loopwright::hours
