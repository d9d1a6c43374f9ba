// Whole texts of hours as one says them.
//
// Rules: private to hours.
#pragma once

#include <string>
#include <string_view>

#include "hours/rules.hpp"

namespace loopwright::hours {

/// "Monday to Friday, seven till ten; but not on bank holidays". Safe to print.
std::string rules_in_words(const Rules& rules, std::string_view text);

/// "on " Sunday, "in the " school holidays, "from " 1 March to 2 May; nothing before times alone.
std::string_view preposition(const Rule& rule);

}  // namespace loopwright::hours
