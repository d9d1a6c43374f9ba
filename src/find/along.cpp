// A walk of the passage graph as a drive.
//   1. Each pass is a stop, joined to the one before by the quickest leg. A pass that begins where the
//      last one ends shares its vertex with it.
//   2. Where the walk waits, a way round of at least that time is put in, from the last to the first, so
//      that what was put in is still where it was.
//   3. Then as with any plan: no quiet street too often, the minutes filled, and improved.
#include <algorithm>

#include "find/builder.hpp"

namespace loopwright::find {

namespace {

constexpr std::int64_t longer_ms = 45000;  // a way round may take so much more than it must; ours

}  // namespace

/// From the end of one vertex to the end of the other, both included, within limit_ms; to the end of the
/// drive for `door`.
std::vector<Vertex> Builder::shortest_leg(Vertex from, Vertex to, std::int64_t limit_ms) {
  if (from == to) return {from};
  const auto seeds = from == Times::door ? hunt_.starts : std::vector<reach::LocalSeed>{{from, 0}};
  out_.run(seeds, {.limit_ms = limit_ms});
  if (to != Times::door) return out_.reached(to) ? out_.path(to) : std::vector<Vertex>{};
  Vertex best = reach::LocalGraph::none;
  std::int64_t best_ms = 0;
  for (const reach::LocalSeed& goal : hunt_.goals) {
    if (!out_.reached(goal.vertex)) continue;
    const std::int64_t ms = out_.ms(goal.vertex) - hunt_.graph.along_ms(goal.vertex) + goal.ms;
    if (best == reach::LocalGraph::none || ms < best_ms) best = goal.vertex, best_ms = ms;
  }
  return best == reach::LocalGraph::none ? std::vector<Vertex>{} : out_.path(best);
}

void Builder::wait_before(Plan& plan, std::size_t stop, std::int64_t ms) {
  const std::int64_t room_ms = hunt_.high_ms - away_ms(hunt_, plan);
  if (room_ms < ms) return;
  learn_used(plan, stop, {});
  add_way_round(plan, stop, ms, std::min(room_ms, ms + longer_ms));
}

Plan Builder::build_along(const PassageGraph& graph, const circuit::Walk& walk,
                          const Liking& liking) {
  dice_ = Dice(1);
  Plan plan;
  Vertex at = Times::door;
  std::uint32_t exit = graph.problem().home();
  plan.legs.clear();
  for (const std::uint32_t row : walk.passes) {
    const auto way = graph.way(row);
    const circuit::Pass& pass = graph.problem().passes[row];
    const std::int64_t limit_ms =
        graph.problem().leg(exit, pass.entry) + hunt_.graph.along_ms(way.front());
    plan.legs.push_back(shortest_leg(at, way.front(), limit_ms));
    plan.stops.push_back({{way.begin(), way.end()},
                          static_cast<std::int32_t>(graph.candidate(row)),
                          static_cast<std::int32_t>(graph.want(row))});
    at = way.back();
    exit = pass.exit;
  }
  plan.legs.push_back(walk.passes.empty() ? std::vector<Vertex>{}
                                          : shortest_leg(at, Times::door, hunt_.high_ms));
  for (std::size_t i = walk.passes.size(); i-- > 0;)
    if (walk.wait_ms[i] > 0) wait_before(plan, i, walk.wait_ms[i]);
  spare_quiet_streets(plan, liking);
  fill(plan, liking);
  improve(plan, liking);
  return plan;
}

}  // namespace loopwright::find
