// 1. Walk the loop; at each stretch take the lanes of its piece that concern whoever drives it:
//    those in our direction, those of unknown direction, and contraflow lanes, which we meet; and
//    the bus gates on the stretch itself, in force when a car isn't let through.
// 2. What goes on from the stretch before with all we know of it alike is one.
// 3. Judge each for the interval from the low arrival at its first stretch to the high arrival at the
//    stretch behind its last, on the clock of the area.
#include <algorithm>

#include "loopwright/hours/condition.hpp"
#include "loopwright/lanes/doubt.hpp"
#include "loopwright/lanes/lanes.hpp"
#include "loopwright/lanes/thing.hpp"

namespace loopwright::lanes {
namespace {

using road::LaneDirection;
using road::LaneSide;
using wish::BusLanePass;
using wish::Verdict;

/// A lane or gate beside one or more stretches of the drive: what is told of it before it is judged.
struct Run {
  BusLanePass pass;
  bool no_direction = false;
  std::string doubt;    ///< in words; empty: none
  double length_m = 0;  ///< of the roads it lies on

  [[nodiscard]] bool same_as(const Run& other) const {
    const BusLanePass &a = pass, &b = other.pass;
    return a.what == b.what && a.side == b.side && a.hours == b.hours && a.who == b.who &&
           a.lane == b.lane && a.lanes == b.lanes && no_direction == other.no_direction &&
           a.doubt_tags == b.doubt_tags;
  }
};

bool concerns(const road::BusLane& lane, StretchId driven) {
  if (lane.contraflow != 0 || lane.direction == LaneDirection::unknown) return true;
  return (lane.direction == LaneDirection::against) == driven.against();
}

std::string_view name(LaneSide side) {
  if (side == LaneSide::unknown) return "unknown";
  return side == LaneSide::left ? "left" : "right";
}

Run run_of(const road::Roads& roads, const road::BusLane& lane) {
  Run run;
  run.pass.what = name(lane.contraflow != 0 ? Thing::contraflow_lane : Thing::bus_lane);
  run.pass.side = name(lane.side);
  if (const auto hours = roads.text(lane.hours); !hours.empty()) run.pass.hours = hours;
  run.pass.who = roads.text(lane.who);
  run.pass.lane = lane.lane, run.pass.lanes = lane.lanes;
  run.pass.source = {roads.pieces[lane.piece.index()].way, ObjectType::way};
  run.pass.tag = roads.text(lane.source);
  run.no_direction = lane.direction == LaneDirection::unknown;
  if (lane.doubtful != 0) {
    run.pass.doubt_tags = roads.text(lane.doubt);
    run.doubt = doubt_words(run.pass.doubt_tags.empty() ? "?" : run.pass.doubt_tags);
  }
  return run;
}

/// When a gate keeps cars out, as a text of hours::Timetable: its values the other way round.
std::string hours_in_force(const road::Roads& roads, const road::TimedRule& rule) {
  const auto read = hours::read_conditional(roads.text(rule.base), roads.text(rule.text));
  const bool open = read.base() == "yes";
  if (open && read.rows().size() == 1 && read.rows()[0].value != "yes")
    return read.rows()[0].condition.text();
  std::string text = open ? "" : "yes @ (24/7)";
  for (const hours::Conditional::Row& row : read.rows())
    text += std::string(text.empty() ? "" : "; ") + (row.value == "yes" ? "no" : "yes") + " @ (" +
            row.condition.text() + ")";
  return text;
}

Run run_of(const road::Roads& roads, const road::TimedRule& gate) {
  Run run;
  run.pass.what = name(Thing::bus_gate);
  run.pass.side = name(LaneSide::unknown);
  run.pass.hours = hours_in_force(roads, gate);
  run.pass.who = roads.text(gate.who);
  run.pass.source = {roads.piece(gate.stretch).way, ObjectType::way};
  run.pass.tag = roads.text(gate.source);
  run.length_m = roads.piece(gate.stretch).length_m;
  return run;
}

/// What stretch i adds goes on from the one before, or begins.
void add(std::vector<Run>& runs, Run run, std::size_t i) {
  const auto goes_on = std::ranges::find_if(
      runs, [&](const Run& before) { return before.pass.last + 1 == i && before.same_as(run); });
  if (goes_on != runs.end()) {
    goes_on->pass.last = i;
    goes_on->length_m += run.length_m;
    return;
  }
  run.pass.first = run.pass.last = i;
  runs.push_back(std::move(run));
}

std::vector<Run> runs_on(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<Run> runs;
  for (std::size_t i = 0; i < loop.stretches.size(); ++i) {
    const StretchId driven = loop.stretches[i].stretch;
    for (const road::BusLane& lane : roads.bus_lanes_of(driven.piece()))
      if (concerns(lane, driven)) add(runs, run_of(roads, lane), i);
    for (const road::TimedRule& rule : roads.timed_rules_of(driven))
      if (rule.about == road::Timed::gate) add(runs, run_of(roads, rule), i);
  }
  return runs;
}

Judgement judge_run(const Run& run, const Passing& when, const hours::Setting& setting) {
  if (run.pass.what == "contraflow bus lane")
    return {Verdict::in_force, "runs against the other traffic"};
  if (run.no_direction)
    return {Verdict::check_the_plate, "the map doesn't say in which direction it runs"};
  Judgement by_hours = judge(run.pass.hours.value_or(""), when, setting);
  if (!run.doubt.empty() && by_hours.verdict == Verdict::usable)
    return {Verdict::check_the_plate, run.doubt, by_hours.next_change};
  return by_hours;
}

}  // namespace

std::vector<BusLanePass> bus_lanes_on(const road::Roads& roads, const wish::Loop& loop,
                                      const hours::Setting& setting) {
  std::vector<BusLanePass> passes;
  for (Run& run : runs_on(roads, loop)) {
    if (run.pass.what == name(Thing::bus_gate))
      run.pass.what = name(thing_of(road::Timed::gate, run.length_m));
    const Passing when = passing_of(loop, {run.pass.first, run.pass.last}, setting);
    Judgement judgement = judge_run(run, when, setting);
    run.pass.arrive_from = write_clock(when.from);
    run.pass.arrive_to = write_clock(when.to);
    run.pass.verdict = judgement.verdict;
    run.pass.why = std::move(judgement.why);
    run.pass.next_change = judgement.next_change;
    run.pass.doubt =
        run.no_direction ? "the map doesn't say in which direction it runs" : run.doubt;
    passes.push_back(std::move(run.pass));
  }
  return passes;
}

}  // namespace loopwright::lanes
