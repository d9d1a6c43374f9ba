// The plain grammar of hours, as a week of spans.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "loopwright/hours/hours.hpp"

namespace loopwright::hours {

struct Parsed {
  std::optional<Week> week;    ///< empty when the text goes beyond the plain grammar
  std::size_t stopped_at = 0;  ///< bytes read
};

Parsed parse(std::string_view text);

}  // namespace loopwright::hours
