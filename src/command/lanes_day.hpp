// The whole of a day, hour by hour, of things with hours: a table no wider than 80 columns.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "loopwright/lanes/timed_things.hpp"

namespace loopwright::command {

/// A row of the table.
struct DayRow {
  std::string name;
  lanes::TimedThing thing;
};

/// A day on the clock of a zone.
struct Day {
  Date date;
  std::string zone;
  hours::Setting setting;
};

/// "Monday 30 November 2026, hour by hour", the table, then each row's name and changes.
void print_day(std::ostream& out, const std::vector<DayRow>& rows, const Day& day);

}  // namespace loopwright::command
