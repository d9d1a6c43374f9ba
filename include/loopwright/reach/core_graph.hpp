// Many searches between the same few vertices of a compact graph: the rest is taken out once, so that each
// search meets little else.
//
//   CoreGraph core(graph, ends, extra_ms);   CoreSweep sweep(core, entries);
//   sweep.run_after(exit, limit_ms);   if (sweep.reached(entry)) use(sweep.ms(entry));
//
// Meaning of times and costs: as in local_graph.hpp; a drive between kept vertices costs what it does there.
// Rules: only kept vertices may be searched from, and asked for what a sweep was told it will be; a CoreSweep is scratch for one thread; graphs outlive what is
// made of them.
#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "loopwright/reach/local_graph.hpp"

namespace loopwright::reach {

class CoreGraph {
 public:
  using Vertex = LocalGraph::Vertex;
  struct Arc {
    std::uint32_t to = 0;  ///< row of the core
    std::int32_t ms = 0;
    std::int64_t cost = 0;
  };

  /// kept: each once; extra_ms: as in LocalLimits; toll_ms: by vertex, what counts as time on top; empty: none.
  CoreGraph(const LocalGraph& graph, std::span<const Vertex> kept,
            std::span<const std::int32_t> extra_ms = {},
            std::span<const std::int32_t> toll_ms = {});

  [[nodiscard]] std::size_t size() const { return first_.size() - 1; }
  /// Of a kept vertex.
  [[nodiscard]] std::uint32_t row(Vertex v) const { return row_[v]; }
  [[nodiscard]] std::span<const Arc> out(std::uint32_t row) const {
    return std::span(arcs_).subspan(first_[row], first_[row + 1] - first_[row]);
  }
  /// Time along a kept vertex.
  [[nodiscard]] std::int32_t along_ms(Vertex v) const { return graph_->along_ms(v); }

 private:
  const LocalGraph* graph_;
  std::vector<std::uint32_t> row_;  ///< by vertex
  std::vector<std::uint32_t> first_;
  std::vector<Arc> arcs_;
};

class CoreSweep {
 public:
  /// asked: kept vertices, each once, that will be asked for: a search ends when all of them are reached for good.
  CoreSweep(const CoreGraph& core, std::span<const LocalGraph::Vertex> asked);
  ~CoreSweep();

  /// From the beginning of a vertex.
  void run(LocalGraph::Vertex from, std::int64_t limit_ms);
  /// From the end of a vertex, which itself is reached only by coming back to it.
  void run_after(LocalGraph::Vertex from, std::int64_t limit_ms);

  /// Rules: v was said to be asked for
  [[nodiscard]] bool reached(LocalGraph::Vertex v) const;
  /// When the end of v is reached, by the drive that costs least. Rules: reached(v)
  [[nodiscard]] std::int64_t ms(LocalGraph::Vertex v) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace loopwright::reach
