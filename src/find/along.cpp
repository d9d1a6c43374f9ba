// A walk of the passage graph as a drive.
//   1. Each pass is a stop, joined to the one before by the leg that costs least. A pass that begins where the
//      last one ends shares its vertex with it.
//   2. Where the walk waits, a way round is put in that takes at least what is needed and as little more as can be
//      found, from the last to the first, so that what was put in is still where it was.
#include <algorithm>

#include "find/builder.hpp"

namespace loopwright::find {

namespace {

// Ours, tried on Newport: how much longer a way round may be than the wait it is for.
constexpr std::int64_t little_longer_ms = 10'000;
constexpr std::int64_t much_longer_ms = 160'000;

}  // namespace

/// From the end of one vertex to the end of the other, both included; to the end of the drive for `door`.
std::vector<Vertex> Builder::courteous_leg(Vertex from, Vertex to,
                                           std::span<const std::int32_t> courtesy_ms) {
  if (from == to) return {from};
  const auto seeds = from == Times::door ? hunt_.starts : std::vector<reach::LocalSeed>{{from, 0}};
  const auto goals = to == Times::door ? hunt_.goals : std::vector<reach::LocalSeed>{{to, 0}};
  out_.run(seeds, {.limit_ms = hunt_.high_ms, .extra_ms = courtesy_ms, .until = goals});
  if (to != Times::door) return out_.reached(to) ? out_.path(to) : std::vector<Vertex>{};
  Vertex best = reach::LocalGraph::none;
  std::int64_t best_cost = 0;
  for (const reach::LocalSeed& goal : hunt_.goals) {
    if (!out_.reached(goal.vertex)) continue;
    const std::int64_t cost = out_.cost(goal.vertex) - hunt_.graph.along_ms(goal.vertex) + goal.ms;
    if (best == reach::LocalGraph::none || cost < best_cost) best = goal.vertex, best_cost = cost;
  }
  return best == reach::LocalGraph::none ? std::vector<Vertex>{} : out_.path(best);
}

void Builder::wait_before(Plan& plan, std::size_t stop, std::int64_t least_ms) {
  const std::int64_t room_ms = hunt_.high_ms - away_ms(hunt_, plan);
  learn_used(plan, stop, {});
  for (std::int64_t more_ms = little_longer_ms; more_ms <= much_longer_ms; more_ms *= 2) {
    const std::int64_t most_ms = std::min(room_ms, least_ms + more_ms);
    if (most_ms < least_ms || add_way_round(plan, stop, least_ms, most_ms)) return;
  }
}

Plan Builder::lay_along(const PassageGraph& graph, const circuit::Walk& walk,
                        std::span<const std::int32_t> courtesy_ms) {
  dice_ = Dice(1);
  Plan plan;
  if (walk.passes.empty()) return plan;
  plan.legs.clear();
  Vertex at = Times::door;
  for (const std::uint32_t row : walk.passes) {
    const auto way = graph.way(row);
    plan.legs.push_back(courteous_leg(at, way.front(), courtesy_ms));
    plan.stops.push_back({{way.begin(), way.end()},
                          static_cast<std::int32_t>(graph.candidate(row)),
                          static_cast<std::int32_t>(graph.want(row))});
    at = way.back();
  }
  plan.legs.push_back(courteous_leg(at, Times::door, courtesy_ms));
  for (std::size_t i = walk.passes.size(); i-- > 0;)
    if (walk.wait_ms[i] > 0)
      wait_before(plan, i, std::max<std::int64_t>(1, walk.wait_ms[i] - longer_wait_ms));
  return plan;
}

}  // namespace loopwright::find
