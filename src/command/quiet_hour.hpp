// When a drive lies in quiet hours and in daylight.
#pragma once

#include <optional>
#include <string>

#include "loopwright/base/instant.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/hours/timetable.hpp"

namespace loopwright::command {

/// A drive of so many minutes, and the hours that are quiet.
struct QuietAsk {
  const hours::Timetable& quiet;
  int minutes = 0;
};

/// Why it isn't quiet then, "that isn't in the quiet hours", or not light; empty when it is, from the first minute to the
/// last. What nobody can tell isn't.
std::string why_not_quiet(const QuietAsk& ask, const Instant& start, const hours::Setting& setting);

/// The first quarter of an hour from `from` on at which it is, within so many days.
std::optional<Instant> next_quiet(const QuietAsk& ask, const Instant& from, int days,
                                  const hours::Setting& setting);

}  // namespace loopwright::command
