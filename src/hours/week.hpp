// Arithmetic on the spans of a week that comes round again.
#pragma once

#include "loopwright/hours/hours.hpp"

namespace loopwright::hours {

inline constexpr int day_minutes = 24 * 60;

/// Takes a span, counted from a weekday's midnight, out of whatever lies there, also out of spans
/// that began the day before.
void cut(Week& week, int day, Span out);

/// Sorts each day's spans and joins those that touch.
void tidy(Week& week);

/// Whether some span holds this minute of a weekday.
bool covers(const Week& week, int day, int minute);

}  // namespace loopwright::hours
