// Method: each row of a pass is asked for the minutes in which nine drives in ten are on it: every bus lane
// beside it that runs with the drive says yes (in force), no (usable) or nothing sure. Only when all
// rows and lanes say the same it is the verdict; else the plate must be read. A lane of unknown direction
// or without hours says nothing; nor does one whose tags contradict each other, unless it is in force.
#include "loopwright/hours/timetable.hpp"
#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

using road::BusLane;
using road::LaneDirection;
using wish::Verdict;

bool is_ours(const BusLane& lane, StretchId driven) {
  if (lane.contraflow != 0) return false;
  const LaneDirection with_us = driven.against() ? LaneDirection::against : LaneDirection::along;
  return lane.direction == with_us || lane.direction == LaneDirection::unknown;
}

Verdict says(const Drive& drive, const BusLane& lane, const Interval& when) {
  const std::string_view hours = drive.roads.text(lane.hours);
  if (lane.direction == LaneDirection::unknown || hours.empty()) return Verdict::check_the_plate;
  switch (hours::Timetable(hours).through(when.from, when.to, drive.setting).in_force) {
    case hours::Tri::yes:
      return Verdict::in_force;
    case hours::Tri::no:
      return lane.doubtful == 0 ? Verdict::usable : Verdict::check_the_plate;
    case hours::Tri::unknown:
      break;
  }
  return Verdict::check_the_plate;
}

Verdict verdict_on(const Drive& drive, const wish::Pass& pass) {
  bool usable = true, in_force = true;
  for (std::size_t i = pass.first; i <= pass.last; ++i) {
    const Interval when = time_on(drive, i);
    bool beside_one = false;
    for (const BusLane& lane : drive.roads.bus_lanes_of(drive.stretches[i].piece())) {
      if (!is_ours(lane, drive.stretches[i])) continue;
      const Verdict verdict = says(drive, lane, when);
      usable = usable && verdict == Verdict::usable;
      in_force = in_force && verdict == Verdict::in_force;
      beside_one = true;
    }
    if (!beside_one) return Verdict::check_the_plate;
  }
  if (usable) return Verdict::usable;
  return in_force ? Verdict::in_force : Verdict::check_the_plate;
}

}  // namespace

void judge_lanes(Drive& drive) {
  for (FoundPass& found : drive.passes)
    if (found.pass.kind == road::Kind::bus_lane) found.pass.verdict = verdict_on(drive, found.pass);
}

}  // namespace loopwright::proof
