// The list of a day's lessons: a line each, "09:00 90 WREN roundabouts".
//
// Rules: a start, minutes, a pupil's code, then what to practise, as --want takes it; a kind in the plural means as many as
// fit; nothing, or "next", what the book proposes. '#' begins a comment; empty lines are passed over.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"

namespace loopwright::command {

struct DayLine {
  CivilTime start;
  int minutes = 60;
  std::string code;
  std::vector<std::string> wants;  ///< as --want takes them; empty: what the book proposes
  std::string from;                ///< "day.txt, line 3"
};

/// In order of their starts. Throws InputError naming file and line.
std::vector<DayLine> read_day(std::string_view text, const std::string& file, Date day);

}  // namespace loopwright::command
