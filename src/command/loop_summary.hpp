// What a search found, in a few lines for the person at the keyboard.
#pragma once

#include <iosfwd>

#include "loopwright/base/region.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// In what distances are told, and by which clock times are.
struct SummaryBy {
  SpeedUnit unit = SpeedUnit::mph;
  hours::Setting setting;
};

/// Rules: lines no wider than 80 columns, but for a word that is.
void print_summary(std::ostream& out, const wish::Answer& answer, const SummaryBy& by);

}  // namespace loopwright::command
