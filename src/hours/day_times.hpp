// When on a day the spans of a rule run, in minutes after that day's midnight.
//
// Rules: private to hours.
#pragma once

#include <cstdint>
#include <optional>

#include "hours/rules.hpp"
#include "loopwright/hours/setting.hpp"

namespace loopwright::hours {

/// Minutes after the midnight of the day it begins on; `to` may pass 24:00, up to 48:00.
struct Minutes {
  int from = 0, to = 0;
};

/// Of a span that begins on a day; empty when the sun can't tell.
std::optional<Minutes> minutes_on(const TimeSpan& span, std::int64_t day, const Setting& setting);

/// The minutes beyond which the span surely doesn't go when the sun's times aren't known.
Minutes widest_minutes(const TimeSpan& span);

}  // namespace loopwright::hours
