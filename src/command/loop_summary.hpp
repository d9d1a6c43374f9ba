// What a search found, in a few lines for the person at the keyboard.
#pragma once

#include <iosfwd>

#include "loopwright/base/region.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

void print_summary(std::ostream& out, const wish::Answer& answer, SpeedUnit unit);

}  // namespace loopwright::command
