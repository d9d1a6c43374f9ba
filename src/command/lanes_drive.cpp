// Method:
//   1. Bus lanes and gates as room lanes judges them, each with all one needs at its plate.
//   2. Streets that are shut at some hours, turns that are forbidden at some and made here, and
//      limits that hang on the hour, each for the time at which it is met.
#include "command/lanes_drive.hpp"

#include <algorithm>
#include <ostream>

#include "command/lanes_words.hpp"
#include "command/print.hpp"
#include "loopwright/lanes/lanes.hpp"

namespace loopwright::command {
namespace {

using wish::BusLanePass;

void print_lane(std::ostream& out, const TimedDrive& drive, const BusLanePass& lane) {
  const Date today = drive.setting.on_clock(drive.loop.start).civil().date;
  out << "  " << street_of(drive.loop, lane.first) << ", " << lane_words(lane) << ": "
      << wish::name(lane.verdict) << '\n'
      << "    in force: " << hours_words(lane) << '\n'
      << "    passed " << lane.arrive_from << " to " << lane.arrive_to << '\n';
  if (lane.why != hours_words(lane)) out << "    why: " << lane.why << '\n';
  if (!lane.doubt.empty() && lane.why != lane.doubt) out << "    in doubt: " << lane.doubt << '\n';
  if (lane.next_change) {
    out << "    next change: " << change_words(*lane.next_change, today) << '\n';
  }
  if (!lane.who.empty()) out << "    then for: " << users_words(lane.who) << '\n';
  out << "    by " << lane.tag << " (" << object(lane.source) << ")\n"
      << "    read on the plate: " << plate_words(lane) << '\n';
}

void print_met(std::ostream& out, const TimedDrive& drive, road::Timed about) {
  for (const lanes::RuleMet& met : lanes::rules_met(drive.roads, drive.loop, about)) {
    out << "  " << street_of(drive.loop, met.rows.first) << ": " << lanes::met_words(met, drive)
        << "\n    by " << drive.roads.text(met.rule->source) << " (way/"
        << drive.roads.piece(met.rule->stretch).way << ")\n";
  }
}

void print_turns(std::ostream& out, const TimedDrive& drive) {
  for (const lanes::TurnMet& met : lanes::turns_met(drive.roads, drive.loop)) {
    const lanes::Said said = lanes::said_of(met, drive);
    out << "  from " << street_of(drive.loop, met.at - 1) << " into "
        << street_of(drive.loop, met.at) << ": " << said.rule << lanes::when_passing(said.when)
        << ": " << said.verdict << '\n'
        << "    by relation/" << met.rule->relation << '\n';
  }
}

}  // namespace

std::string street_of(const wish::Loop& loop, std::size_t row) {
  const std::string& street = loop.stretches[row].street;
  return street.empty() ? "unnamed road" : street;
}

void print_bus_lanes(std::ostream& out, const TimedDrive& drive) {
  const auto passed = lanes::bus_lanes_on(drive.roads, drive.loop, drive.setting);
  if (passed.empty()) out << "  no bus lane on the way, as far as it is mapped\n";
  for (const BusLanePass& lane : passed) print_lane(out, drive, lane);
}

void print_other_hours(std::ostream& out, const TimedDrive& drive) {
  print_met(out, drive, road::Timed::access);
  print_turns(out, drive);
  print_met(out, drive, road::Timed::limit);
}

}  // namespace loopwright::command
