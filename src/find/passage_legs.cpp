// Method: one bounded sweep from each exit, over what is left of the graph when only entries and exits need stay
// (reach/core_graph.hpp), and one from home measure the legs to all entries; one backwards from the end the
// last legs. Exits are shared out to two threads: each writes rows of its own, so that the answer is
// the same on any machine.
#include <algorithm>
#include <future>

#include "find/passage_graph.hpp"

namespace loopwright::find {

namespace {

using reach::LocalGraph;

// Ours. With many passes about, a drive of more than a fifth of the lesson between two isn't worth it.
constexpr std::size_t many_exits = 60;
constexpr std::int64_t long_leg_ms = 10 * 60'000;
constexpr std::uint32_t threads = 2;

}  // namespace

/// By vertex: home to its beginning, its beginning to the end; and home straight to the end.
struct PassageGraph::Ends {
  std::vector<std::int64_t> home_ms, end_ms;
  std::int64_t straight_ms = 0;
};

/// From home straight to the end. Rules: the sweep ran from home.
std::int64_t PassageGraph::least_home_ms(const reach::LocalSweep& sweep) const {
  if (!hunt_.ground.wish.end) return 0;
  std::int64_t least_ms = circuit::no_way - shift_ms_;
  for (const reach::LocalSeed& goal : hunt_.goals)
    if (sweep.reached(goal.vertex))
      least_ms = std::min(
          least_ms, std::max<std::int64_t>(
                        0, sweep.ms(goal.vertex) - hunt_.graph.along_ms(goal.vertex) + goal.ms));
  return least_ms;
}

PassageGraph::Ends PassageGraph::measure_ends(std::span<const std::int32_t> courtesy_ms) const {
  const LocalGraph& graph = hunt_.graph;
  Ends ends{std::vector<std::int64_t>(graph.size(), circuit::no_way),
            std::vector<std::int64_t>(graph.size(), circuit::no_way)};
  const reach::LocalLimits limits{.limit_ms = hunt_.high_ms, .extra_ms = courtesy_ms};
  reach::LocalSweep sweep(graph);
  sweep.run_back(hunt_.goals, limits);
  for (const Vertex v : sweep.settled()) ends.end_ms[v] = sweep.ms(v);
  sweep.run(hunt_.starts, limits);
  for (const Vertex v : sweep.settled()) ends.home_ms[v] = sweep.ms(v) - graph.along_ms(v);
  ends.straight_ms = least_home_ms(sweep);
  return ends;
}

void PassageGraph::measure_from(reach::CoreSweep& sweep, std::uint32_t exit, const Ends& ends,
                                std::int64_t limit_ms, circuit::Problem& problem) const {
  const LocalGraph& graph = hunt_.graph;
  const Exit& from = exits_[exit];
  std::int64_t* legs = problem.legs.data() + static_cast<std::size_t>(exit) * (entries_.size() + 1);
  if (from.only != LocalGraph::none) {
    legs[entry_row_[from.only]] = 0;
    return;
  }
  const std::int64_t left_ms = hunt_.high_ms - ends.home_ms[from.vertex];
  if (from.at_end)
    sweep.run_after(from.vertex, std::min(left_ms, limit_ms));
  else
    sweep.run(from.vertex, std::min(left_ms, limit_ms));
  for (std::size_t e = 0; e < entries_.size(); ++e) {
    const Vertex entry = entries_[e];
    if (!sweep.reached(entry)) continue;
    const std::int64_t ms = sweep.ms(entry) - graph.along_ms(entry);
    if (ms + ends.end_ms[entry] <= left_ms) legs[e] = ms;
  }
  if (!from.at_end) {
    legs[entries_.size()] = ends.end_ms[from.vertex];
    return;
  }
  for (const LocalGraph::Arc& arc : graph.out(from.vertex))
    legs[entries_.size()] = std::min(legs[entries_.size()], arc.turn_ms + ends.end_ms[arc.to]);
}

std::vector<Vertex> PassageGraph::begins_and_ends() const {
  std::vector<Vertex> vertices = entries_;
  for (const Exit& exit : exits_) vertices.push_back(exit.vertex);
  std::sort(vertices.begin(), vertices.end());
  vertices.erase(std::unique(vertices.begin(), vertices.end()), vertices.end());
  return vertices;
}

circuit::Problem PassageGraph::problem(const Spared& spared) const {
  circuit::Problem problem = problem_;
  const std::span<const std::int32_t> courtesy_ms = spared.courtesy_ms;
  if (!spared.toll_ms.empty())
    for (std::size_t pass = 0; pass < ways_.size(); ++pass)
      for (std::size_t i = 1; i + 1 < ways_[pass].size(); ++i)
        problem.passes[pass].inner_ms += spared.toll_ms[ways_[pass][i]];
  problem.legs.assign((exits_.size() + 1) * (entries_.size() + 1), circuit::no_way);
  const Ends ends = measure_ends(courtesy_ms);
  for (std::size_t e = 0; e < entries_.size(); ++e)
    problem.legs[exits_.size() * (entries_.size() + 1) + e] = ends.home_ms[entries_[e]] + shift_ms_;
  problem.legs.back() = ends.straight_ms + shift_ms_;
  const bool any_length = courtesy_ms.empty() || exits_.size() < many_exits;
  const std::int64_t limit_ms =
      any_length ? hunt_.high_ms : std::max(long_leg_ms, hunt_.high_ms / 5);
  const reach::CoreGraph core(hunt_.graph, begins_and_ends(), courtesy_ms, spared.toll_ms);
  const auto measure_share = [&](std::uint32_t first) {
    reach::CoreSweep sweep(core, entries_);
    for (std::uint32_t exit = first; exit < exits_.size(); exit += threads)
      measure_from(sweep, exit, ends, limit_ms, problem);
  };
  // Where no thread can be begun, the second share is measured after the first.
  constexpr std::launch beside = std::launch::async | std::launch::deferred;
  std::future<void> other = std::async(beside, measure_share, 1);
  measure_share(0);
  other.get();
  problem.longer = measure_longer(problem, spared);
  return problem;
}

}  // namespace loopwright::find
