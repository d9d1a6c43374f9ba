// The lines of a loop's summary on stopping and on going home early.
#pragma once

#include <iosfwd>

#include "loopwright/hours/setting.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

void print_stops(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop,
                 const hours::Setting& setting);

}  // namespace loopwright::command
