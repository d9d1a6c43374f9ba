// Reads a whole text of hours into rules.
//
// Rules: private to hours.
#pragma once

#include <optional>
#include <string_view>

#include "hours/rules.hpp"
#include "hours/token_reader.hpp"

namespace loopwright::hours {

struct Parsed {
  std::optional<Rules> rules;      ///< empty when it can't be read
  std::optional<Trouble> trouble;  ///< then where and why
};
Parsed parse(std::string_view text);

}  // namespace loopwright::hours
