// What a text of hours, or a conditional value, says of a moment, in lines that an instructor reads.
#pragma once

#include <iosfwd>
#include <string>

#include "command/hours_place.hpp"
#include "loopwright/hours/condition.hpp"

namespace loopwright::command {

struct Moment {
  const Region& region;
  const hours::Setting& setting;
  Instant at;  ///< on the clock of the setting
};

/// Rules: the hours are readable.
void say_hours(std::ostream& out, const hours::Hours& hours, const Moment& when);

/// The value that holds for a learner's car; hours in it that can't be read are shown, with their
/// place.
void say_conditional(std::ostream& out, const hours::Conditional& value, const Moment& when);

/// The text with a mark under the place where reading stopped, and what was looked for there.
void show_unreadable(std::ostream& out, const hours::Hours& hours);

}  // namespace loopwright::command
