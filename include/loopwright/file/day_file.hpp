// A day's sheet as JSON, for programs: {"day": "2026-11-28", "lessons": [ … ], "between": [ … ]} (DEVELOPERS.md, THE PAGE).
#pragma once

#include <string>

#include "loopwright/wish/day_sheet.hpp"

namespace loopwright::file {

std::string write_day_sheet(const wish::DaySheet& sheet);

}  // namespace loopwright::file
