// What has hours on one drive: its bus lanes and gates with their verdicts, streets and turns that
// are shut at other hours, limits by the hour; and whether another start would be better.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// A drive, and what its hours are read by. Rules: the loop is resolved; both outlive it.
struct TimedDrive {
  const road::Roads& roads;
  const wish::Loop& loop;
  const hours::Setting& setting;
};

void print_bus_lanes(std::ostream& out, const TimedDrive& drive);
void print_other_hours(std::ostream& out, const TimedDrive& drive);

/// "leave eight minutes earlier, at 14:52, and both lanes may be used"; nothing when all may be.
void print_advice(std::ostream& out, const TimedDrive& drive);

/// Streets of the drive that are shut at some hours, gates left out; a row for each rule met.
struct StreetMet {
  lanes::Rows rows;
  const road::TimedRule* rule = nullptr;
};
std::vector<StreetMet> streets_met(const TimedDrive& drive, road::Timed about);

/// "Osk Road", "unnamed road"
std::string street_of(const wish::Loop& loop, std::size_t row);

}  // namespace loopwright::command
