// The lesson as an entry of a calendar (iCalendar, RFC 5545).
#pragma once

#include <string>

#include "loopwright/card/card.hpp"

namespace loopwright::card {

/// One VEVENT from the start for the minutes of the wish (of an own drive: the likely end), in UTC. It names
/// no place: a calendar is shared more easily than a sheet of paper. pupil: a code, may be empty.
std::string write_calendar(const Lesson& lesson, const std::string& pupil);

}  // namespace loopwright::card
