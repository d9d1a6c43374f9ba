// What has hours on one drive: its bus lanes and gates with their verdicts, streets and turns that
// are shut at other hours, limits by the hour; and whether another start would be better.
#pragma once

#include <iosfwd>
#include <string>

#include "loopwright/lanes/met.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

using lanes::TimedDrive;

void print_bus_lanes(std::ostream& out, const TimedDrive& drive);
void print_other_hours(std::ostream& out, const TimedDrive& drive);

/// "leave eight minutes earlier, at 14:52, and both lanes may be used"; nothing when all may be.
void print_advice(std::ostream& out, const TimedDrive& drive);

/// "Osk Road", "unnamed road"
std::string street_of(const wish::Loop& loop, std::size_t row);

}  // namespace loopwright::command
