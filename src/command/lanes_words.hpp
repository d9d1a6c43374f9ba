// Words of the command `lanes`: what a thing with hours is called, what is told of it, when.
#pragma once

#include <iosfwd>
#include <string>
#include <string_view>

#include "loopwright/lanes/timed_things.hpp"

namespace loopwright::command {

/// Columns by which what is told of a thing stands in below its head.
inline constexpr std::size_t set_in = 4;

/// "Osk Road, going west, bus lane on the left, lane 1 of 3 from the left"; heading may be empty.
std::string thing_head(const lanes::TimedThing& thing, std::string_view heading = {});

/// "buses, taxis and cycles" of "bus;taxi;bicycle"
std::string users_words(std::string_view who);

/// "16:00", or "Tuesday 1 December 2026, 07:00" on another day than the one given.
std::string change_words(const Instant& change, const Date& today);

/// "15:01 to 15:02", or "15:01" alone.
std::string passing_words(const lanes::Passing& when);

/// "four minutes", "one minute"
std::string minutes_words(std::int64_t minutes);

/// "hours: Monday to Saturday, seven till ten", "hours: not mapped".
std::string hours_line(const lanes::TimedThing& thing);

/// "next change: 16:00, then in force, keep out"; "next change: none to come".
std::string next_change_line(const lanes::TimedThing& thing, const Instant& at,
                             const hours::Setting& setting);

/// Prints what is known of a thing whenever one passes: its doubt, for whom it is kept, the map.
/// `objects` are the map objects in words.
void print_known(std::ostream& out, const lanes::TimedThing& thing, const std::string& objects);

/// Printed at the head and at the end of every list.
void print_plan_caution(std::ostream& out);
void print_plate_caution(std::ostream& out);

}  // namespace loopwright::command
