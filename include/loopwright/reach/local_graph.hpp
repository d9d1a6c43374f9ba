// The part of the turn graph a lesson can use, as a compact graph of its own, so that the many
// searches of one wish cost what is within reach and not what is on the map.
//
//   LocalGraph graph(roads, costs, reachable);   LocalSweep sweep(graph);
//   sweep.run(seeds, {.limit_ms = left, .extra_ms = penalties});
//
// Meaning of times: as in reach.hpp. `cost` is time plus what a caller adds to make roads less
// liked (extra_ms); the search follows least cost and carries the true time along.
// Rules: a LocalSweep is scratch for one thread.
#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "loopwright/reach/reach.hpp"

namespace loopwright::reach {

/// Puts states that begin near each other next to each other, in an order that rests on nothing else: a search
/// then finds what it needs next in the cache.
void sort_by_place(const road::Roads& roads, std::vector<StateId>& states);

class LocalGraph {
 public:
  using Vertex = std::uint32_t;
  static constexpr Vertex none = 0xffffffffU;
  struct Arc {
    Vertex to = 0;  ///< forwards: the next state; backwards: the one before
    std::int32_t turn_ms = 0;
    std::int32_t step_ms = 0;    ///< with the whole stretch of `to`
    std::int32_t angle_deg = 0;  ///< change of heading when driving it, positive to the right
  };

  /// states: each once; vertices are numbered in their order.
  LocalGraph(const road::Roads& roads, const Costs& costs, std::span<const StateId> states);

  [[nodiscard]] std::size_t size() const { return states_.size(); }
  [[nodiscard]] StateId state(Vertex v) const { return states_[v]; }
  [[nodiscard]] StretchId stretch(Vertex v) const { return stretches_[v]; }
  [[nodiscard]] std::int32_t along_ms(Vertex v) const { return along_ms_[v]; }
  [[nodiscard]] Vertex vertex(StateId s) const;  ///< none when it isn't in the graph
  [[nodiscard]] std::span<const Arc> out(Vertex v) const { return arcs(out_first_, out_, v); }
  [[nodiscard]] std::span<const Arc> in(Vertex v) const { return arcs(in_first_, in_, v); }
  /// The arc from one vertex to the other; null when there is none.
  [[nodiscard]] const Arc* arc_between(Vertex from, Vertex to) const;

 private:
  static std::span<const Arc> arcs(const std::vector<std::uint32_t>& first,
                                   const std::vector<Arc>& all, Vertex v) {
    return std::span(all).subspan(first[v], first[v + 1] - first[v]);
  }
  std::vector<StateId> states_;
  std::vector<Vertex> by_state_;  ///< vertices in order of their states
  std::vector<StretchId> stretches_;
  std::vector<std::int32_t> along_ms_;
  std::vector<std::uint32_t> out_first_, in_first_;
  std::vector<Arc> out_, in_;
};

struct LocalSeed {
  LocalGraph::Vertex vertex = 0;
  std::int32_t ms = 0;
};

class LocalSweep;

struct LocalLimits {
  std::int64_t limit_ms = 0;                    ///< true time beyond which nothing is settled
  std::span<const std::int32_t> extra_ms = {};  ///< by vertex, not negative; empty: none
  /// Searching ends when all of these are settled; empty: it doesn't. What isn't settled then may have times
  /// that are too long.
  std::span<const LocalSeed> until = {};
  /// A sweep that ran the other way: vertices are left out that lie beyond the limit together with its times.
  const LocalSweep* meeting = nullptr;
};

class LocalSweep {
 public:
  explicit LocalSweep(const LocalGraph& graph);
  ~LocalSweep();
  LocalSweep(LocalSweep&&) noexcept;

  void run(std::span<const LocalSeed> seeds, const LocalLimits& limits);
  void run_back(std::span<const LocalSeed> seeds, const LocalLimits& limits);

  [[nodiscard]] bool reached(LocalGraph::Vertex v) const;
  [[nodiscard]] std::int64_t ms(LocalGraph::Vertex v) const;    ///< true time; Rules: reached(v)
  [[nodiscard]] std::int64_t cost(LocalGraph::Vertex v) const;  ///< Rules: reached(v)
  /// Vertex before (forwards) or after (backwards); none at a seed. Rules: reached(v)
  [[nodiscard]] LocalGraph::Vertex parent(LocalGraph::Vertex v) const;
  [[nodiscard]] std::span<const std::uint32_t> settled() const;
  /// The drive between a seed and v, in driving order, both included. Rules: reached(v)
  [[nodiscard]] std::vector<LocalGraph::Vertex> path(LocalGraph::Vertex v) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace loopwright::reach
