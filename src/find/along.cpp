// A walk of the passage graph as a drive.
//   1. Each pass is a stop, joined to the one before by the leg that costs least. A pass that begins where the
//      last one ends shares its vertex with it. A leg goes round quiet streets that what is laid before it, and
//      the passes, already drive as often as may be.
//   2. Where passes would begin too soon after each other, the way of least cost is taken that takes at least what
//      is needed, as the walk reckons (reach/slow_ways.hpp); when none is found, a way round over some place that takes as
//      little more as can be found. From the last to the first, so that what was put in is still where it was.
#include <algorithm>
#include <array>

#include "find/builder.hpp"

namespace loopwright::find {

namespace {

// Ours, tried on Newport: how much longer a way round may be than the wait it is for.
constexpr std::int64_t little_longer_ms = 10'000;
constexpr std::int64_t much_longer_ms = 160'000;
constexpr std::int64_t slow_at_most_ms = 360'000;  // longer waits are left to ways over some place
constexpr std::int32_t worn_out_ms = 120'000;      // what a street at its cap costs a leg on top

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

void Builder::wait_before(Plan& plan, std::size_t stop, std::int64_t least_ms,
                          std::span<const std::int32_t> courtesy_ms) {
  const std::int64_t room_ms = hunt_.high_ms - away_ms(hunt_, plan);
  learn_used(plan, stop, {});
  if (go_slowly(plan, stop, least_ms, room_ms, courtesy_ms)) return;
  for (std::int64_t more_ms = little_longer_ms; more_ms <= much_longer_ms; more_ms *= 2) {
    const std::int64_t most_ms = std::min(room_ms, least_ms + more_ms);
    if (most_ms < least_ms || add_way_round(plan, stop, least_ms, most_ms)) return;
  }
}

/// Takes the way of least cost that takes so much longer; false when there is none, or no room for it.
bool Builder::go_slowly(Plan& plan, std::size_t leg, std::int64_t more_ms, std::int64_t room_ms,
                        std::span<const std::int32_t> courtesy_ms) {
  const std::vector<Vertex>& path = plan.legs[leg];
  const std::int64_t now_ms = path_ms(path);
  const std::int64_t most_ms = std::min(now_ms + room_ms, now_ms + more_ms + much_longer_ms);
  if (path.empty() || more_ms > room_ms || most_ms > slow_at_most_ms) return false;
  const Vertex to = path.back();
  const std::array<reach::LocalSeed, 1> goal{{{to, hunt_.graph.along_ms(to)}}};
  back_.run_back(goal, {.limit_ms = most_ms});
  avoid_worn_out(courtesy_ms);
  slow_.run({path.front(), true, most_ms, &back_, extra_ms_});
  std::vector<Vertex> way = slow_.way(to, now_ms + more_ms);
  if (way.empty()) return false;
  plan.legs[leg] = std::move(way);
  return true;
}

/// What each vertex costs a leg: the courtesy, and more where a street is at its cap.
void Builder::avoid_worn_out(std::span<const std::int32_t> courtesy_ms) {
  extra_ms_.assign(courtesy_ms.begin(), courtesy_ms.end());
  for (Vertex v = 0; v < hunt_.graph.size(); ++v)
    if (is_worn_out(v)) extra_ms_[v] += worn_out_ms;
}

void Builder::use(std::span<const Vertex> path) {
  for (const Vertex v : path) {
    std::uint8_t& used = used_[hunt_.piece_of[v]];
    used = static_cast<std::uint8_t>(std::min(255, used + 1));
  }
}

bool Builder::is_worn_out(Vertex v) const {
  const std::uint32_t piece = hunt_.piece_of[v];
  return hunt_.piece_quiet[piece] != 0 && used_[piece] >= hunt_.piece_most[piece];
}

/// What a leg drives beyond the stops at its ends.
std::span<const Vertex> Builder::between(const std::vector<Vertex>& leg, bool from_door,
                                         bool to_door) {
  std::span<const Vertex> path = leg;
  if (!from_door && !path.empty()) path = path.subspan(1);
  if (!to_door && !path.empty()) path = path.first(path.size() - 1);
  return path;
}

/// The leg that costs least, or one round worn-out streets.
std::vector<Vertex> Builder::lay_leg(Vertex from, Vertex to,
                                     std::span<const std::int32_t> courtesy_ms) {
  const bool from_door = from == Times::door, to_door = to == Times::door;
  std::vector<Vertex> path = courteous_leg(from, to, courtesy_ms);
  const std::span<const Vertex> driven = between(path, from_door, to_door);
  if (std::any_of(driven.begin(), driven.end(), [&](Vertex v) { return is_worn_out(v); })) {
    avoid_worn_out(courtesy_ms);
    path = courteous_leg(from, to, extra_ms_);
  }
  use(between(path, from_door, to_door));
  return path;
}

/// From the end of the first vertex to the end of the last.
std::int64_t Builder::path_ms(std::span<const Vertex> path) const {
  std::int64_t ms = 0;
  for (std::size_t i = 1; i < path.size(); ++i)
    ms += hunt_.graph.arc_between(path[i - 1], path[i])->step_ms;
  return ms;
}

/// From where a stop begins to where the next one does.
std::int64_t Builder::begin_to_begin_ms(const Plan& plan, std::size_t stop) const {
  const Stop& from = plan.stops[stop];
  const std::int64_t stay_ms =
      from.candidate < 0 ? 0 : hunt_.candidates[static_cast<std::size_t>(from.candidate)].stop_ms;
  return hunt_.graph.along_ms(from.path.front()) + path_ms(from.path) + stay_ms +
         path_ms(plan.legs[stop + 1]) - hunt_.graph.along_ms(plan.stops[stop + 1].path.front());
}

/// By stop, how much later it must begin to be as far from the one before as the walk has it, or as its spacing
/// asks when that is less: a toll is no time.
std::vector<std::int64_t> Builder::waits_along(const Plan& plan, const circuit::Problem& problem,
                                               const circuit::Walk& walk) const {
  std::vector<std::int64_t> waits(walk.passes.size(), 0);
  for (std::size_t i = 1; i < walk.passes.size(); ++i) {
    const circuit::Pass& before = problem.passes[walk.passes[i - 1]];
    const circuit::Pass& pass = problem.passes[walk.passes[i]];
    const std::int64_t meant_ms =
        before.inner_ms + problem.leg(before.exit, pass.entry) + walk.wait_ms[i];
    std::int64_t spacing_ms = 0;
    for (const std::uint32_t group : pass.groups)
      spacing_ms = std::max(spacing_ms, problem.goals[problem.groups[group].goal].spacing_ms);
    waits[i] = std::min(meant_ms, spacing_ms) - begin_to_begin_ms(plan, i - 1);
  }
  return waits;
}

Plan Builder::lay_along(const PassageGraph& graph, const circuit::Problem& problem,
                        const circuit::Walk& walk, std::span<const std::int32_t> courtesy_ms) {
  dice_ = Dice(1);
  Plan plan;
  if (walk.passes.empty()) return plan;
  plan.legs.clear();
  std::fill(used_.begin(), used_.end(), std::uint8_t{0});
  for (const std::uint32_t row : walk.passes) use(graph.way(row));
  Vertex at = Times::door;
  for (const std::uint32_t row : walk.passes) {
    const auto way = graph.way(row);
    plan.legs.push_back(lay_leg(at, way.front(), courtesy_ms));
    plan.stops.push_back({{way.begin(), way.end()}, graph.candidate(row), graph.want(row)});
    at = way.back();
  }
  plan.legs.push_back(lay_leg(at, Times::door, courtesy_ms));
  const std::vector<std::int64_t> waits = waits_along(plan, problem, walk);
  for (std::size_t i = waits.size(); i-- > 0;)
    if (waits[i] > 0) wait_before(plan, i, waits[i], courtesy_ms);
  return plan;
}

}  // namespace loopwright::find
