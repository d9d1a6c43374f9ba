// Bus lanes that a wish asks for at their hours, as candidates. A run of lanes may hold several with other
// hours, one behind the other, and a pass has a verdict only when all that is driven of it has:
//   1. From the way into a run every way on in it is followed to where it is left, the exit included.
//   2. Each is asked minute by minute of the lesson; one that can't have the verdict asked for at any
//      minute one may be there is none.
#include <algorithm>

#include "find/hunt.hpp"

namespace loopwright::find {
namespace {

// Ours: a lane has a piece for each side street.
constexpr std::size_t most_lane_stretches = 24;
constexpr std::size_t most_ways_on = 24;

}  // namespace

bool LaneMinutes::has(wish::Verdict verdict, std::int64_t from_ms, std::int64_t to_ms) const {
  const auto& spans = verdict == wish::Verdict::usable ? usable : in_force;
  return std::ranges::any_of(spans, [&](const Minutes& span) {
    return span.first * ms_per_minute <= to_ms && (span.last + 1) * ms_per_minute > from_ms;
  });
}

std::vector<Candidate> Hunt::lane_candidates(Vertex entry, const road::Chance& chance) const {
  std::vector<Candidate> done, open;
  if (auto way_in = candidate_at(entry, chance)) open.push_back(std::move(*way_in));
  while (!open.empty() && done.size() < most_ways_on) {
    const Candidate candidate = std::move(open.back());
    open.pop_back();
    for (const reach::LocalGraph::Arc& arc : graph.out(candidate.path.back())) {
      Candidate further = candidate;
      further.path.push_back(arc.to);
      further.inner_ms += arc.turn_ms + graph.along_ms(arc.to);
      const road::Stretch& next = ground.roads.stretch(graph.stretch(arc.to));
      const bool inside = (next.runs & road::bit(chance.kind)) != 0;
      if (inside && further.path.size() > most_lane_stretches) continue;
      if (inside && std::ranges::find(candidate.path, arc.to) != candidate.path.end()) continue;
      (inside ? open : done).push_back(std::move(further));
    }
  }
  std::erase_if(done, [&](Candidate& candidate) {
    candidate.lanes = lane_minutes(std::span(candidate.path).first(candidate.path.size() - 1));
    return candidate.lanes.usable.empty() && candidate.lanes.in_force.empty();
  });
  return done;
}

LaneMinutes Hunt::lane_minutes(std::span<const Vertex> beside) const {
  LaneMinutes minutes;
  for (std::int64_t minute = 0; minute * ms_per_minute <= high_ms; ++minute) {
    const Instant at = ground.wish.start.plus_seconds(60 * minute);
    wish::Verdict verdict = ground.lane_verdicts.on(graph.stretch(beside.front()), {at, at});
    for (const Vertex v : beside.subspan(1))
      if (ground.lane_verdicts.on(graph.stretch(v), {at, at}) != verdict)
        verdict = wish::Verdict::check_the_plate;
    if (verdict == wish::Verdict::check_the_plate) continue;
    auto& spans = verdict == wish::Verdict::usable ? minutes.usable : minutes.in_force;
    if (spans.empty() || spans.back().last + 1 < minute) spans.push_back({minute, minute});
    spans.back().last = minute;
  }
  return minutes;
}

bool Hunt::serves(const Candidate& candidate, const wish::Want& want) const {
  if (candidate.into != want.into || !wish::counts_for(candidate.kind, candidate.movement, want))
    return false;
  if (!want.verdict) return true;
  const std::int64_t latest_ms = candidate.there_ms + high_ms - candidate.least_ms;
  return candidate.lanes.has(*want.verdict, candidate.there_ms, latest_ms);
}

}  // namespace loopwright::find
