// The hours of a whole day for each lane, gate and timed street of a drive, as a table to print out.
#pragma once

#include <iosfwd>
#include <string_view>

#include "command/lanes_drive.hpp"

namespace loopwright::command {

/// zone: whose clock the day has.
void print_day(std::ostream& out, const TimedDrive& drive, const Date& day, std::string_view zone);

}  // namespace loopwright::command
