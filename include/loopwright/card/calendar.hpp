// The lesson as an entry of a calendar (iCalendar, RFC 5545).
#pragma once

#include <optional>
#include <string>

#include "loopwright/card/card.hpp"

namespace loopwright::card {

/// Whose entry it is, and how long.
struct CalendarEntry {
  std::string pupil = {};           ///< a code, and what is said behind it; may be empty
  std::optional<int> minutes = {};  ///< of a lesson of the book, talk and all; none: of the wish
};

/// One VEVENT from the start for those minutes, of a drive without any until the likely end, in UTC. It names no place: a calendar
/// is shared more easily than a sheet of paper.
std::string write_calendar(const Lesson& lesson, const CalendarEntry& entry);

}  // namespace loopwright::card
