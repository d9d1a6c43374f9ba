// What a text of hours, or a conditional value, says of a moment, in lines that an instructor reads.
#pragma once

#include <cstddef>
#include <iosfwd>
#include <string>
#include <string_view>

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

/// The value that holds for a learner's car, as far as the text can be read.
void say_conditional(std::ostream& out, const hours::Conditional& value, const Moment& when);

/// The place in a UTF-8 text as people count it, from one.
std::size_t character_at(std::string_view text, std::size_t byte);

/// The text, or the part around it when it is long, with a mark under the place where reading
/// stopped, and what was looked for there.
void show_unreadable(std::ostream& out, std::string_view text, const hours::Unread& unread);

}  // namespace loopwright::command
