// What a search found, in a few lines for the person at the keyboard.
#pragma once

#include <iosfwd>
#include <string>

#include "loopwright/base/region.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// In what distances are told, and by which clock times are.
struct SummaryBy {
  SpeedUnit unit = SpeedUnit::mph;
  hours::Setting setting;
};

/// "start at 07:05 or 09:15 instead: what is in the way is open then", the day said when it isn't that of
/// `start`; empty when the shortfall names none.
std::string better_starts_words(const wish::Shortfall& shortfall, const Instant& start);

/// Rules: lines no wider than 80 columns, but for a word that is.
void print_summary(std::ostream& out, const wish::Answer& answer, const SummaryBy& by);

}  // namespace loopwright::command
