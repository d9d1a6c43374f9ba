// The lines of a loop's summary on independent driving, and on what it is a variant of.
#pragma once

#include <iosfwd>

#include "loopwright/hours/setting.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// Nothing for a loop that is no variant.
void print_variant(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop);

void print_independent(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop,
                       const hours::Setting& setting);

}  // namespace loopwright::command
