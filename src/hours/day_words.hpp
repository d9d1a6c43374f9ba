// The words of weekdays and months, as the grammar and as mappers write them.
//
// Rules: private to hours.
#pragma once

#include <optional>

#include "hours/tokens.hpp"

namespace loopwright::hours {

/// Monday 0 for "mo", "mon", "monday"; empty for other words.
std::optional<int> weekday_of(const Token& token);
/// January 1 for "jan", "january"; empty for other words.
std::optional<int> month_of(const Token& token);

}  // namespace loopwright::hours
