// The compact graph of one wish.
//   1. Vertices are the given states; an arc is kept when both its ends are and it isn't banned.
//   2. The arcs are laid out once forwards and once backwards, each with the wait at its turn.
//   3. Forwards a step costs the wait and the stretch driven into; backwards the wait and the
//      stretch come from, plus what the caller adds to that stretch.
#include "loopwright/reach/local_graph.hpp"

#include <algorithm>

#include "reach/search.hpp"

namespace loopwright::reach {

namespace {

struct ArcRows {
  const LocalGraph* graph;
  bool back;
  [[nodiscard]] std::span<const LocalGraph::Arc> arcs(std::uint32_t v) const {
    return back ? graph->in(v) : graph->out(v);
  }
  [[nodiscard]] const LocalGraph::Arc* base() const { return arcs(0).data(); }
  [[nodiscard]] std::uint32_t first(std::uint32_t v) const {
    return static_cast<std::uint32_t>(arcs(v).data() - base());
  }
  [[nodiscard]] std::uint32_t last(std::uint32_t v) const {
    return first(v) + static_cast<std::uint32_t>(arcs(v).size());
  }
  [[nodiscard]] std::uint32_t target_of(std::uint32_t row) const { return base()[row].to; }
};

/// Rows of `first` become positions: counts at v + 1 turn into starts.
void sum_up(std::vector<std::uint32_t>& first) {
  for (std::size_t v = 1; v < first.size(); ++v) first[v] += first[v - 1];
}

}  // namespace

LocalGraph::LocalGraph(const road::Roads& roads, const Costs& costs,
                       std::span<const StateId> states)
    : states_(states.begin(), states.end()) {
  for (const StateId s : states_) {
    stretches_.push_back(roads.stretch_of(s));
    along_ms_.push_back(costs.stretch_ms[stretches_.back().index()]);
  }
  out_first_.assign(states_.size() + 1, 0);
  in_first_.assign(states_.size() + 1, 0);
  for (Vertex v = 0; v < states_.size(); ++v) {
    const std::uint32_t begin = roads.turn_first[states_[v].index()];
    const std::uint32_t end = roads.turn_first[states_[v].index() + 1];
    for (std::uint32_t row = begin; row < end; ++row) {
      const road::Turn& turn = roads.turns[row];
      const Vertex to = vertex(turn.to);
      if (to == none || (!costs.turn_banned.empty() && costs.turn_banned[row] != 0)) continue;
      out_.push_back(
          {to, costs.control_ms[static_cast<std::size_t>(turn.control)], turn.angle_deg, 0});
      ++in_first_[to + 1];
    }
    out_first_[v + 1] = static_cast<std::uint32_t>(out_.size());
  }
  sum_up(in_first_);
  in_.resize(out_.size());
  std::vector<std::uint32_t> next(in_first_.begin(), in_first_.end() - 1);
  for (Vertex v = 0; v < states_.size(); ++v)
    for (const Arc& arc : out(v)) in_[next[arc.to]++] = {v, arc.turn_ms, arc.angle_deg, 0};
}

LocalGraph::Vertex LocalGraph::vertex(StateId s) const {
  const auto it = std::lower_bound(states_.begin(), states_.end(), s);
  return it != states_.end() && *it == s ? static_cast<Vertex>(it - states_.begin()) : none;
}

const LocalGraph::Arc* LocalGraph::arc_between(Vertex from, Vertex to) const {
  const auto arcs = out(from);
  const auto it = std::find_if(arcs.begin(), arcs.end(), [&](const Arc& a) { return a.to == to; });
  return it == arcs.end() ? nullptr : &*it;
}

struct LocalSweep::Inside {
  const LocalGraph* graph;
  Labels labels;
  bool ran_back = false;

  void run(std::span<const LocalSeed> seeds, const LocalLimits& limits, bool back) {
    ran_back = back;
    const ArcRows rows{graph, back};
    const LocalGraph::Arc* base = graph->size() == 0 ? nullptr : rows.base();
    std::vector<std::pair<std::uint32_t, std::int64_t>> starts;
    for (const LocalSeed& seed : seeds) starts.emplace_back(seed.vertex, seed.ms);
    search(
        RowGraph(rows), starts,
        [&](const RowEdge& e) {
          const std::int64_t ms = base[e.row].turn_ms + graph->along_ms(e.to);
          const std::int64_t extra = limits.extra_ms.empty() ? 0 : limits.extra_ms[e.to];
          return Step{ms + extra, ms, true};
        },
        limits.limit_ms, labels);
  }
};

LocalSweep::LocalSweep(const LocalGraph& graph)
    : inside_(new Inside{&graph, Labels(graph.size())}) {}
LocalSweep::~LocalSweep() = default;
LocalSweep::LocalSweep(LocalSweep&&) noexcept = default;

void LocalSweep::run(std::span<const LocalSeed> seeds, const LocalLimits& limits) {
  inside_->run(seeds, limits, false);
}
void LocalSweep::run_back(std::span<const LocalSeed> seeds, const LocalLimits& limits) {
  inside_->run(seeds, limits, true);
}
bool LocalSweep::reached(LocalGraph::Vertex v) const {
  return inside_->labels.reached(v);
}
std::int64_t LocalSweep::ms(LocalGraph::Vertex v) const {
  return inside_->labels.at(v).ms;
}
std::int64_t LocalSweep::cost(LocalGraph::Vertex v) const {
  return inside_->labels.at(v).cost;
}
LocalGraph::Vertex LocalSweep::parent(LocalGraph::Vertex v) const {
  return inside_->labels.at(v).parent;
}
std::span<const std::uint32_t> LocalSweep::settled() const {
  return inside_->labels.settled();
}

std::vector<LocalGraph::Vertex> LocalSweep::path(LocalGraph::Vertex v) const {
  auto chain = inside_->labels.up_from(v);
  if (!inside_->ran_back) std::reverse(chain.begin(), chain.end());
  return chain;
}

}  // namespace loopwright::reach
