// Method:
//   1. Bus lanes and gates as room lanes judges them, each with all one needs at its plate.
//   2. Rules with hours on streets: rows in a run with the same rule are told once, with the time
//      they are driven; turns whose whole path is driven; limits that hang on the hour.
#include "command/lanes_drive.hpp"

#include <algorithm>
#include <ostream>

#include "command/lanes_words.hpp"
#include "command/print.hpp"
#include "loopwright/lanes/lanes.hpp"

namespace loopwright::command {
namespace {

using lanes::Passing;
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

bool goes_on(const StreetMet& before, const road::TimedRule& rule, std::size_t row) {
  return before.rows.last + 1 == row && before.rule->base == rule.base &&
         before.rule->text == rule.text;
}

void print_streets(std::ostream& out, const TimedDrive& drive) {
  lanes::Clockwork clock(drive.roads, drive.setting);
  for (const StreetMet& met : streets_met(drive, road::Timed::access)) {
    const Passing when = lanes::passing_of(drive.loop, met.rows, drive.setting);
    const bool open = clock.open(*met.rule, when).in_force == hours::Tri::yes;
    out << "  " << street_of(drive.loop, met.rows.first) << ": "
        << lanes::words_of(drive.roads, *met.rule) << lanes::when_passing(when) << ": "
        << (open ? "may be driven" : "keep out") << '\n'
        << "    by " << drive.roads.text(met.rule->source) << " (way/"
        << drive.roads.piece(met.rule->stretch).way << ")\n";
  }
}

/// How many stretches of the rule's path are driven from this row on.
std::size_t driven_of(const TimedDrive& drive, const road::TurnRule& rule, std::size_t row) {
  const auto path = drive.roads.path_of(rule);
  std::size_t n = 0;
  while (n < path.size() && row + n < drive.loop.stretches.size() &&
         drive.loop.stretches[row + n].stretch == path[n])
    ++n;
  return n;
}

/// The drive does what the rule forbids at its hours.
bool against(const TimedDrive& drive, const road::TurnRule& rule, std::size_t row) {
  const std::size_t path = drive.roads.path_of(rule).size();
  const std::size_t driven = driven_of(drive, rule, row);
  if (rule.only == 0) return driven == path;
  return driven + 1 == path && row + driven < drive.loop.stretches.size();
}

void print_turns(std::ostream& out, const TimedDrive& drive) {
  lanes::Clockwork clock(drive.roads, drive.setting);
  for (std::size_t row = 0; row + 1 < drive.loop.stretches.size(); ++row) {
    for (const road::TurnRule& rule : drive.roads.turn_rules) {
      if (!rule.condition.known() ||
          drive.roads.path_of(rule).front() != drive.loop.stretches[row].stretch) {
        continue;
      }
      if (!against(drive, rule, row)) continue;
      const Passing when = lanes::turning_into(drive.loop, row + 1, drive.setting);
      const bool free = clock.binds(rule, when).in_force == hours::Tri::no;
      out << "  from " << street_of(drive.loop, row) << " into " << street_of(drive.loop, row + 1)
          << ": " << lanes::words_of(drive.roads, rule) << lanes::when_passing(when) << ": "
          << (free ? "may be turned" : "keep out") << '\n'
          << "    by relation/" << rule.relation << '\n';
    }
  }
}

void print_limits(std::ostream& out, const TimedDrive& drive) {
  for (const StreetMet& met : streets_met(drive, road::Timed::limit)) {
    const Passing when = lanes::passing_of(drive.loop, met.rows, drive.setting);
    const auto limit = lanes::limit_when(drive.roads, met.rule->stretch, when, drive.setting);
    std::string values;
    for (const std::string& value : limit.values) {
      const std::string_view said = value.empty() ? "the limit without hours" : value;
      values.append(values.empty() ? "" : " or ").append(said);
    }
    out << "  " << street_of(drive.loop, met.rows.first) << ": " << limit.words
        << lanes::when_passing(when) << ": " << values
        << (limit.settled() ? "" : ", check the signs") << '\n'
        << "    by " << drive.roads.text(met.rule->source) << " (way/"
        << drive.roads.piece(met.rule->stretch).way << ")\n";
  }
}

}  // namespace

std::string street_of(const wish::Loop& loop, std::size_t row) {
  const std::string& street = loop.stretches[row].street;
  return street.empty() ? "unnamed road" : street;
}

std::vector<StreetMet> streets_met(const TimedDrive& drive, road::Timed about) {
  std::vector<StreetMet> all;
  for (std::size_t row = 0; row < drive.loop.stretches.size(); ++row) {
    const StretchId stretch = drive.loop.stretches[row].stretch;
    for (const road::TimedRule& rule : drive.roads.timed_rules_of(stretch)) {
      if (rule.about != about) continue;
      const auto before =
          std::ranges::find_if(all, [&](const StreetMet& met) { return goes_on(met, rule, row); });
      if (before != all.end()) {
        before->rows.last = row;
      } else {
        all.push_back({{row, row}, &rule});
      }
    }
  }
  return all;
}

void print_bus_lanes(std::ostream& out, const TimedDrive& drive) {
  const auto passed = lanes::bus_lanes_on(drive.roads, drive.loop, drive.setting);
  if (passed.empty()) out << "  no bus lane on the way, as far as it is mapped\n";
  for (const BusLanePass& lane : passed) print_lane(out, drive, lane);
}

void print_other_hours(std::ostream& out, const TimedDrive& drive) {
  print_streets(out, drive);
  print_turns(out, drive);
  print_limits(out, drive);
}

}  // namespace loopwright::command
