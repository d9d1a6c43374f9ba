// One sweep fills one entry; an entry takes 12 bytes a vertex, and the store is emptied when it
// would pass its limit, so a large reach costs time again rather than memory.
#include "find/times.hpp"

#include <algorithm>

namespace loopwright::find {

namespace {

constexpr std::size_t most_bytes = std::size_t{160} << 20;

}  // namespace

std::vector<Vertex> FromTimes::path(Vertex v) const {
  std::vector<Vertex> chain;
  for (; v != reach::LocalGraph::none; v = parent[v]) chain.push_back(v);
  std::reverse(chain.begin(), chain.end());
  return chain;
}

Times::Times(const Hunt& hunt)
    : hunt_(hunt),
      sweep_(hunt.graph),
      most_entries_(std::max<std::size_t>(8, most_bytes / (12 * (hunt.graph.size() + 1)))) {}

std::vector<reach::LocalSeed> Times::seeds_at(Vertex source) const {
  return source == door ? hunt_.starts : std::vector<reach::LocalSeed>{{source, 0}};
}

const FromTimes& Times::from(Vertex source) {
  if (const auto it = from_.find(source); it != from_.end()) return it->second;
  if (from_.size() >= most_entries_) from_.clear();
  sweep_.run(seeds_at(source), {.limit_ms = hunt_.high_ms});
  FromTimes& entry = from_[source];
  entry.ms.assign(hunt_.graph.size(), -1);
  entry.parent.assign(hunt_.graph.size(), reach::LocalGraph::none);
  for (const Vertex v : sweep_.settled()) {
    entry.ms[v] = static_cast<std::int32_t>(sweep_.ms(v));
    entry.parent[v] = sweep_.parent(v);
  }
  return entry;
}

const std::vector<std::int32_t>& Times::to(Vertex target) {
  if (const auto it = to_.find(target); it != to_.end()) return it->second;
  if (to_.size() >= most_entries_) to_.clear();
  const std::vector<reach::LocalSeed> seeds =
      target == door ? hunt_.goals
                     : std::vector<reach::LocalSeed>{{target, hunt_.graph.along_ms(target)}};
  sweep_.run_back(seeds, {.limit_ms = hunt_.high_ms});
  std::vector<std::int32_t>& entry = to_[target];
  entry.assign(hunt_.graph.size(), -1);
  for (const Vertex v : sweep_.settled()) entry[v] = static_cast<std::int32_t>(sweep_.ms(v));
  return entry;
}

std::int64_t Times::leg(Vertex source, Vertex target) {
  if (target != door) return from(source).ms[target];
  if (source == door) return 0;
  const std::int32_t ms = to(door)[source];
  return ms < 0 ? -1 : std::max<std::int64_t>(0, ms - hunt_.graph.along_ms(source));
}

std::vector<Vertex> Times::leg_path(Vertex source, Vertex target) {
  const std::vector<reach::LocalSeed> goals =
      target == door ? hunt_.goals
                     : std::vector<reach::LocalSeed>{{target, hunt_.graph.along_ms(target)}};
  const auto kept = from_.find(source);
  if (kept == from_.end())  // one path doesn't need all times
    sweep_.run(seeds_at(source), {.limit_ms = hunt_.high_ms, .until = goals});
  const auto ms_of = [&](Vertex v) -> std::int64_t {
    if (kept != from_.end()) return kept->second.ms[v];
    return sweep_.reached(v) ? sweep_.ms(v) : -1;
  };
  Vertex last = reach::LocalGraph::none;
  std::int64_t least_ms = 0;
  for (const reach::LocalSeed& goal : goals) {
    const std::int64_t ms = ms_of(goal.vertex) - hunt_.graph.along_ms(goal.vertex) + goal.ms;
    if (ms_of(goal.vertex) < 0 || (last != reach::LocalGraph::none && ms >= least_ms)) continue;
    last = goal.vertex, least_ms = ms;
  }
  if (last == reach::LocalGraph::none) return {};
  return kept == from_.end() ? sweep_.path(last) : kept->second.path(last);
}

}  // namespace loopwright::find
