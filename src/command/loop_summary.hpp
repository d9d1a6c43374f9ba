// What a search found, in a few lines for the person at the keyboard.
#pragma once

#include <iosfwd>
#include <string>

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// The roads that were searched, whose unit distances are told in, and the clock of the times.
struct SummaryBy {
  const road::Roads& roads;
  const hours::Setting& setting;
};

/// "start at 07:05 or 09:15 instead: what is in the way is open then", the day said when it isn't that of
/// `start`; empty when the shortfall names none.
std::string better_starts_words(const wish::Shortfall& shortfall, const Instant& start);

/// Rules: the loops are resolved; lines no wider than 80 columns, but for a word that is.
void print_summary(std::ostream& out, const wish::Answer& answer, const SummaryBy& by);

}  // namespace loopwright::command
