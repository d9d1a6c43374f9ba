// The head of a sheet: which loop, when, how long, what for, and what bars driving it so.
#pragma once

#include <string>
#include <vector>

#include "card/sections.hpp"

namespace loopwright::card {

struct Head {
  std::string title;               ///< "LOOP 1"
  std::string when;                ///< "Saturday 28 November 2026, 15:00"
  std::vector<std::string> first;  ///< to be read before all else: what bars it, a bank holiday
  std::string driving;             ///< "driving 49 min, likely 47 to 52; stops 8 min"
  std::string back_by;  ///< "back by 16:00", with a word on clocks that are changed before
  std::string level;
  std::string goal;     ///< "Goal: roundabout 3 (on this drive 7)"
  std::string purpose;  ///< the same without the first word
  std::string kept_off;  ///< empty when nothing was to be avoided
};

Head head_of(const Subject& subject);

}  // namespace loopwright::card
