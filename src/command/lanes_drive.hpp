// What has hours on one drive, each thing once with all its passes, their verdicts and what to mind
// just outside its hours; and whether another start would be better.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "loopwright/lanes/timed_things.hpp"

namespace loopwright::command {

using lanes::TimedDrive;

/// A thing and every time at which the drive uses it. Rules: at least one.
struct Met {
  lanes::TimedThing thing;
  std::vector<lanes::Passing> passes;
};
/// Things of which all that is told is the same are one; in the order in which they are first met.
std::vector<Met> met_on(const TimedDrive& drive);

/// "by Osk Road, Mill Street and Fore Street": the streets of a drive in order.
void print_streets(std::ostream& out, const TimedDrive& drive);

void print_met(std::ostream& out, const TimedDrive& drive);

/// The kerbs at which it begins and ends, when a ban on waiting is mapped there.
void print_door_kerbs(std::ostream& out, const TimedDrive& drive);

/// "leave eight minutes earlier, at 14:52, and both lanes may be used", or why no other time of the
/// day is better; nothing when all may be used.
void print_advice(std::ostream& out, const TimedDrive& drive);

}  // namespace loopwright::command
