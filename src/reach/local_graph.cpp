// The compact graph of one wish.
//   1. Vertices are the given states; an arc is kept when both its ends are and it isn't banned.
//   2. The arcs are laid out once forwards and once backwards, each with the wait at its turn.
//   3. Forwards a step costs the wait and the stretch driven into; backwards the wait and the
//      stretch come from, plus what the caller adds to that stretch.
#include "loopwright/reach/local_graph.hpp"

#include <algorithm>
#include <numeric>

#include "reach/label_search.hpp"

namespace loopwright::reach {

namespace {

using Vertex = LocalGraph::Vertex;

/// Bits of two numbers in turn, those of x first: Morton's order (1966), in which neighbours are mostly near.
std::uint64_t interleaved(std::uint32_t x, std::uint32_t y) {
  std::uint64_t bits = 0;
  for (unsigned bit = 0; bit < 32; ++bit) {
    bits |= std::uint64_t{x >> bit & 1U} << (2 * bit + 1);
    bits |= std::uint64_t{y >> bit & 1U} << (2 * bit);
  }
  return bits;
}

std::uint64_t place_of(Point at) {
  const auto unsigned_of = [](std::int32_t e7) {
    return static_cast<std::uint32_t>(e7) ^ 0x80000000U;  // keeps the order
  };
  return interleaved(unsigned_of(at.lat_e7), unsigned_of(at.lon_e7));
}

/// Rows of `first` become positions: counts at v + 1 turn into starts.
void sum_up(std::vector<std::uint32_t>& first) {
  for (std::size_t v = 1; v < first.size(); ++v) first[v] += first[v - 1];
}

}  // namespace

void sort_by_place(const road::Roads& roads, std::vector<StateId>& states) {
  std::vector<std::pair<std::uint64_t, StateId>> placed;
  placed.reserve(states.size());
  for (const StateId s : states)
    placed.emplace_back(place_of(roads.nodes[roads.from_node(roads.stretch_of(s)).index()].at), s);
  std::sort(placed.begin(), placed.end());
  for (std::size_t row = 0; row < states.size(); ++row) states[row] = placed[row].second;
}

LocalGraph::LocalGraph(const road::Roads& roads, const Costs& costs,
                       std::span<const StateId> states)
    : states_(states.begin(), states.end()), by_state_(states.size()) {
  std::iota(by_state_.begin(), by_state_.end(), 0U);
  std::sort(by_state_.begin(), by_state_.end(),
            [&](Vertex a, Vertex b) { return states_[a] < states_[b]; });
  for (const StateId s : states_) {
    stretches_.push_back(roads.stretch_of(s));
    along_ms_.push_back(costs.along_ms(stretches_.back()));
  }
  out_first_.assign(states_.size() + 1, 0);
  in_first_.assign(states_.size() + 1, 0);
  for (Vertex v = 0; v < states_.size(); ++v) {
    const std::uint32_t begin = roads.turn_first[states_[v].index()];
    const std::uint32_t end = roads.turn_first[states_[v].index() + 1];
    for (std::uint32_t row = begin; row < end; ++row) {
      const road::Turn& turn = roads.turns[row];
      const Vertex to = vertex(turn.to);
      if (to == none || costs.is_banned(row)) continue;
      const std::int32_t turn_ms = costs.wait_ms(turn.control);
      out_.push_back({to, turn_ms, turn_ms + along_ms_[to], turn.angle_deg});
      ++in_first_[to + 1];
    }
    out_first_[v + 1] = static_cast<std::uint32_t>(out_.size());
  }
  sum_up(in_first_);
  in_.resize(out_.size());
  std::vector<std::uint32_t> next(in_first_.begin(), in_first_.end() - 1);
  for (Vertex v = 0; v < states_.size(); ++v)
    for (const Arc& arc : out(v))
      in_[next[arc.to]++] = {v, arc.turn_ms, arc.turn_ms + along_ms_[v], arc.angle_deg};
}

LocalGraph::Vertex LocalGraph::vertex(StateId s) const {
  const auto it = std::lower_bound(by_state_.begin(), by_state_.end(), s,
                                   [&](Vertex v, StateId state) { return states_[v] < state; });
  return it != by_state_.end() && states_[*it] == s ? *it : none;
}

const LocalGraph::Arc* LocalGraph::arc_between(Vertex from, Vertex to) const {
  const auto arcs = out(from);
  const auto it = std::find_if(arcs.begin(), arcs.end(), [&](const Arc& a) { return a.to == to; });
  return it == arcs.end() ? nullptr : &*it;
}

struct LocalSweep::Inside {
  const LocalGraph* graph;
  LabelSearch search;
  bool ran_back = false;

  explicit Inside(const LocalGraph& of) : graph(&of), search(of.size()) {}

  void run(std::span<const LocalSeed> seeds, const LocalLimits& limits, bool back) {
    ran_back = back;
    search.start();
    for (const LocalSeed& seed : seeds)
      if (seed.ms <= limits.limit_ms) search.reach(seed.vertex, seed.ms, seed.ms);
    std::size_t until = limits.until.size();
    search.run([&](Vertex v) {
      if (until > 0 && among(limits.until, v) && --until == 0) return false;
      for (const LocalGraph::Arc& arc : back ? graph->in(v) : graph->out(v)) drive(v, arc, limits);
      return true;
    });
  }

 private:
  [[nodiscard]] static bool among(std::span<const LocalSeed> seeds, Vertex v) {
    return std::any_of(seeds.begin(), seeds.end(),
                       [v](const LocalSeed& seed) { return seed.vertex == v; });
  }

  /// With the time that a sweep the other way has of a vertex; both count its stretch.
  [[nodiscard]] bool beyond(const LabelSearch& other, Vertex v, std::int64_t ms,
                            std::int64_t limit_ms) const {
    return !other.touched(v) || ms + other.at(v).ms - graph->along_ms(v) > limit_ms;
  }

  void drive(Vertex from, const LocalGraph::Arc& arc, const LocalLimits& limits) {
    const LabelSearch::Label& label = search.at(from);
    const std::int64_t ms = std::int64_t{label.ms} + arc.step_ms;
    if (ms > limits.limit_ms) return;
    if (limits.meeting != nullptr &&
        beyond(limits.meeting->inside_->search, arc.to, ms, limits.limit_ms))
      return;
    const std::int64_t extra = limits.extra_ms.empty() ? 0 : limits.extra_ms[arc.to];
    search.reach(arc.to, std::int64_t{label.cost} + arc.step_ms + extra, ms, from);
  }
};

LocalSweep::LocalSweep(const LocalGraph& graph) : inside_(new Inside(graph)) {}
LocalSweep::~LocalSweep() = default;
LocalSweep::LocalSweep(LocalSweep&&) noexcept = default;

void LocalSweep::run(std::span<const LocalSeed> seeds, const LocalLimits& limits) {
  inside_->run(seeds, limits, false);
}
void LocalSweep::run_back(std::span<const LocalSeed> seeds, const LocalLimits& limits) {
  inside_->run(seeds, limits, true);
}
bool LocalSweep::reached(LocalGraph::Vertex v) const {
  return inside_->search.touched(v);
}
std::int64_t LocalSweep::ms(LocalGraph::Vertex v) const {
  return inside_->search.at(v).ms;
}
std::int64_t LocalSweep::cost(LocalGraph::Vertex v) const {
  return inside_->search.at(v).cost;
}
LocalGraph::Vertex LocalSweep::parent(LocalGraph::Vertex v) const {
  return inside_->search.at(v).parent;
}
std::span<const std::uint32_t> LocalSweep::settled() const {
  return inside_->search.settled();
}

std::vector<LocalGraph::Vertex> LocalSweep::path(LocalGraph::Vertex v) const {
  std::vector<LocalGraph::Vertex> chain;
  for (; v != LocalGraph::none; v = inside_->search.at(v).parent) chain.push_back(v);
  if (!inside_->ran_back) std::reverse(chain.begin(), chain.end());
  return chain;
}

}  // namespace loopwright::reach
