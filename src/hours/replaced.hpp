// Which rule of a text leaves nothing of an earlier one.
//
// Rules: private to hours.
// Why: by the letter of the specification "Mo-Fr 07:00-10:00; Mo-Fr 16:00-19:00" says the afternoon
// alone, but mappers often mean both, and the plate shows both. So what such a rule puts out is kept
// as a doubt, and is told.
#pragma once

#include <cstddef>

#include "hours/rule_days.hpp"
#include "hours/rules.hpp"

namespace loopwright::hours {

/// Of longer texts it isn't looked for.
inline constexpr std::size_t most_rules_compared = 100;

/// The rule takes whole days from those before it: by replacing them, or by being off without times.
/// Rules: it is one of them.
bool takes_days(const Rules& rules, const Rule& rule);

/// The last rule that leaves nothing of the days of the k-th, since none replaces that one; its own
/// number when there is none.
std::size_t replaced_by(const Rules& rules, const RuleDays& days, std::size_t k);

/// Marks every rule that leaves nothing of an earlier one, unless that one only takes away.
void mark_whole_replacements(Rules& rules);

}  // namespace loopwright::hours
