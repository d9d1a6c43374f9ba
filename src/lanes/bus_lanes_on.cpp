// 1. Walk the loop; at each stretch take the lanes of its piece that concern whoever drives it:
//    those in our direction, those of unknown direction, and contraflow lanes, which we meet.
// 2. A lane that goes on from the stretch before (same hours, side and doubts) is one lane.
// 3. Judge each lane for the interval from the low arrival at its first stretch to the high
//    arrival at the stretch behind its last, on the clock of the area.
#include <algorithm>
#include <cmath>

#include "lanes/passing.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/lanes/lanes.hpp"

namespace loopwright::lanes {
namespace {

using road::LaneDirection;
using road::LaneSide;
using wish::Verdict;

/// A lane beside one or more stretches of the drive.
struct LaneRun {
  const road::BusLane* lane;
  std::size_t first, last;  ///< indices into the loop's stretches
};

bool concerns(const road::BusLane& lane, StretchId driven) {
  if (lane.contraflow != 0 || lane.direction == LaneDirection::unknown) return true;
  return (lane.direction == LaneDirection::against) == driven.against();
}

/// True when both look the same from the car, way by way: a way may be drawn either way round.
bool same_lane(const road::Roads& roads, const road::BusLane& a, const road::BusLane& b) {
  const bool same_knowledge =
      (a.direction == LaneDirection::unknown) == (b.direction == LaneDirection::unknown) &&
      a.contraflow == b.contraflow && a.doubtful == b.doubtful;
  return same_knowledge && a.side == b.side && roads.text(a.hours) == roads.text(b.hours);
}

std::vector<LaneRun> lane_runs(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<LaneRun> runs;
  for (std::size_t i = 0; i < loop.stretches.size(); ++i) {
    const StretchId driven = loop.stretches[i].stretch;
    for (const road::BusLane& lane : roads.bus_lanes_of(driven.piece())) {
      if (!concerns(lane, driven)) continue;
      const auto goes_on = std::find_if(runs.begin(), runs.end(), [&](const LaneRun& run) {
        return run.last + 1 == i && same_lane(roads, *run.lane, lane);
      });
      if (goes_on != runs.end()) {
        goes_on->last = i;
      } else {
        runs.push_back({&lane, i, i});
      }
    }
  }
  return runs;
}

/// A loop file keeps seconds to a thousandth; the same loop must be judged alike before and after.
double as_written(double seconds) {
  return std::round(seconds * 1e3) / 1e3;
}

Passing passing_of(const road::Roads& roads, const wish::Loop& loop, const LaneRun& run) {
  const std::size_t behind = run.last + 1;
  const double low = loop.stretches[run.first].arrive_s.low;
  // A file's times may run backwards; that is for the proof to say.
  const double high =
      std::max(low, behind < loop.stretches.size() ? loop.stretches[behind].arrive_s.high
                                                   : loop.seconds.high + loop.stop_seconds);
  const auto at = [&](double seconds) {
    const Instant instant = loop.start.plus_seconds(static_cast<std::int64_t>(seconds));
    // Plates speak of the clock on the spot, whatever offset the start was given with.
    const std::string& zone = roads.info().zone;
    return zone.empty() ? instant : hours::with_offset_of(zone, instant.unix_s);
  };
  return whole_minutes(at(std::floor(as_written(low))), at(std::ceil(as_written(high))));
}

std::string_view name(LaneSide side) {
  if (side == LaneSide::unknown) return "unknown";
  return side == LaneSide::left ? "left" : "right";
}

Judgement judge_lane(const road::BusLane& lane, std::string_view hours, const Passing& passing) {
  if (lane.contraflow != 0) return {Verdict::in_force, "runs against the other traffic"};
  if (lane.direction == LaneDirection::unknown) {
    return {Verdict::check_the_plate, "the map doesn't say in which direction it runs"};
  }
  const Judgement by_hours = judge(hours, passing.from, passing.to);
  if (lane.doubtful != 0 && by_hours.verdict == Verdict::usable) {
    return {Verdict::check_the_plate, "the map's tags contradict each other"};
  }
  return by_hours;
}

wish::BusLanePass lane_pass(const road::Roads& roads, const wish::Loop& loop, const LaneRun& run) {
  const std::string_view hours = roads.text(run.lane->hours);
  const Passing passing = passing_of(roads, loop, run);
  const Judgement judgement = judge_lane(*run.lane, hours, passing);
  wish::BusLanePass pass;
  pass.first = run.first;
  pass.last = run.last;
  pass.side = name(run.lane->side);
  if (!hours.empty()) pass.hours = hours;
  pass.arrive_from = write_clock(passing.from);
  pass.arrive_to = write_clock(passing.to);
  pass.verdict = judgement.verdict;
  pass.why = judgement.why;
  pass.source = {roads.pieces[run.lane->piece.index()].way, ObjectType::way};
  pass.tag = roads.text(run.lane->source);
  return pass;
}

}  // namespace

std::vector<wish::BusLanePass> bus_lanes_on(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<wish::BusLanePass> passes;
  for (const LaneRun& run : lane_runs(roads, loop)) passes.push_back(lane_pass(roads, loop, run));
  return passes;
}

}  // namespace loopwright::lanes
