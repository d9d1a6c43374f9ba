// Days of a rule as one says them: "Monday to Friday", "the last Sunday of the month, March to
// October".
//
// Rules: private to hours.
#pragma once

#include <string>

#include "hours/rules.hpp"

namespace loopwright::hours {

/// Empty when the rule names no days at all.
std::string days_in_words(const Rule& rule);

/// "Monday to Friday" of bits, Monday lowest.
std::string weekdays_in_words(std::uint8_t bits);

}  // namespace loopwright::hours
