// Times of day as one says them: "quarter past eight", "half past six in the evening".
//
// Rules: private to hours.
#pragma once

#include <string>
#include <vector>

#include "hours/rules.hpp"

namespace loopwright::hours {

/// "seven till ten and four till seven". While all times lie between seven in the morning and
/// seven in the evening nothing can be heard the wrong way; else each part of the day is said.
std::string spans_in_words(const std::vector<TimeSpan>& spans);

}  // namespace loopwright::hours
