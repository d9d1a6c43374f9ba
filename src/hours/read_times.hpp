// Reads the times of a rule: "07:00-10:00,16:00-19:00", "(sunrise+00:30)-20:00", "18:00+".
//
// Rules: private to hours.
#pragma once

#include "hours/rules.hpp"
#include "hours/token_reader.hpp"

namespace loopwright::hours {

/// True when a time begins here.
bool at_time(const TokenReader& reader);
/// Rules: at_time. False, with the trouble kept, when it can't be read.
bool read_times(TokenReader& reader, std::vector<TimeSpan>& spans);

}  // namespace loopwright::hours
