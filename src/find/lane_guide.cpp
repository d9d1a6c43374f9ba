// Method: the drive of the plan is timed, and for each stop that a verdict is asked of, every whole
// minute by which it may still be put off is tried: at the first of those with the verdict it comes early
// by so much, by the last it may be put off.
#include "find/lane_guide.hpp"

#include <algorithm>

#include "find/counting.hpp"
#include "find/describe.hpp"

namespace loopwright::find {
namespace {

/// A plan on the clock.
struct TimedPlan {
  std::vector<PlacePass> passes;
  wish::Loop loop;
  std::vector<std::size_t> rows;  ///< of its stops
  std::int64_t room_ms = 0;
};

TimedPlan on_the_clock(const Hunt& hunt, const Plan& plan) {
  TimedPlan clock;
  const std::vector<Vertex> vertices = plan.vertices();
  clock.room_ms = std::max<std::int64_t>(0, hunt.high_ms - away_ms(hunt, plan));
  if (vertices.empty()) return clock;
  const Drive drive = hunt.drive_of(vertices);
  clock.passes = passes_of(hunt.ground.roads, drive);
  clock.loop = timed(hunt.ground, drive);
  clock.rows = plan.rows_of_stops();
  judge_lanes(hunt.ground, clock.loop, clock.passes);
  if (is_spaced(hunt.ground.wish)) time_passes(hunt.ground, drive, clock.passes);
  return clock;
}

/// The verdict a stop is there for; none for all other stops.
std::optional<wish::Verdict> verdict_for(const Hunt& hunt, const Stop& stop) {
  if (stop.want < 0) return std::nullopt;
  return hunt.ground.wish.wants[static_cast<std::size_t>(stop.want)].verdict;
}

/// The pass of a lane that a row of the drive lies in.
PlacePass* lane_pass_at(TimedPlan& clock, std::size_t row) {
  const auto found = std::ranges::find_if(clock.passes, [&](const PlacePass& p) {
    return p.pass.verdict && p.pass.first <= row && row <= p.pass.last;
  });
  return found == clock.passes.end() ? nullptr : &*found;
}

/// By how many minutes a pass may be put off: the least and the most that give it the verdict.
std::optional<Minutes> put_off(const Hunt& hunt, const TimedPlan& clock, const wish::Pass& pass,
                               wish::Verdict verdict) {
  std::optional<Minutes> found;
  for (std::int64_t minute = 0; minute * ms_per_minute <= clock.room_ms; ++minute) {
    const auto then =
        hunt.ground.lane_verdicts.on(clock.loop, {pass.first, pass.last}, 60 * minute);
    if (then != verdict) continue;
    if (!found) found = {minute, minute};
    found->last = minute;
  }
  return found;
}

}  // namespace

std::vector<PlacePass> LaneGuide::hoped(const Plan& plan) const {
  if (idle()) {
    const std::vector<Vertex> vertices = plan.vertices();
    if (vertices.empty()) return {};
    const Drive drive = hunt_.drive_of(vertices);
    std::vector<PlacePass> passes = passes_of(hunt_.ground.roads, drive);
    if (is_spaced(hunt_.ground.wish)) time_passes(hunt_.ground, drive, passes);
    return passes;
  }
  TimedPlan clock = on_the_clock(hunt_, plan);
  for (std::size_t k = 0; k < clock.rows.size(); ++k) {
    const auto verdict = verdict_for(hunt_, plan.stops[k]);
    if (!verdict) continue;
    PlacePass* found = lane_pass_at(clock, clock.rows[k]);
    if (found != nullptr && put_off(hunt_, clock, found->pass, *verdict))
      found->pass.verdict = verdict;
  }
  return std::move(clock.passes);
}

Leeway LaneGuide::leeway(const Plan& plan) const {
  TimedPlan clock = on_the_clock(hunt_, plan);
  Leeway leeway;
  leeway.room_ms = clock.room_ms;
  leeway.begins_ms.assign(plan.legs.size(), 0);
  leeway.most_ms.assign(plan.legs.size(), clock.room_ms);
  for (std::size_t k = 0; k < clock.rows.size(); ++k) {
    const std::size_t behind = clock.rows[k] + plan.stops[k].path.size();
    const auto& rows = clock.loop.stretches;
    leeway.begins_ms[k + 1] = static_cast<std::int64_t>(
        1000 * (behind < rows.size() ? rows[behind].arrive_s.likely : clock.loop.seconds.likely));
    const auto verdict = verdict_for(hunt_, plan.stops[k]);
    const PlacePass* found = verdict ? lane_pass_at(clock, clock.rows[k]) : nullptr;
    if (found == nullptr) continue;
    const auto minutes = put_off(hunt_, clock, found->pass, *verdict);
    if (!minutes) continue;
    if (minutes->first > 0 && !leeway.early_stop) leeway.early_stop = k;
    for (std::size_t leg = 0; leg <= k; ++leg)
      leeway.most_ms[leg] = std::min(leeway.most_ms[leg], minutes->last * ms_per_minute);
  }
  return leeway;
}

}  // namespace loopwright::find
