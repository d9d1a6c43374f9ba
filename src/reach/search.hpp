// Least-cost search from several seeds with a bound, on any Boost.Graph incidence graph.
//
// Method: Boost's breadth_first_visit with its indirect 4-ary heap as the buffer is Dijkstra's
// algorithm (that is how Boost builds its own); used directly here because the bound, several
// seeds and scratch that is cleared in constant time are wanted together.
//   1. Labels carry a run number; one of another run counts as untouched, so clearing is O(1).
//   2. A vertex beyond the bound (in true time) is never given a label.
//   3. Equal costs are settled by lower vertex number.
#pragma once

#include <algorithm>
#include <boost/graph/breadth_first_search.hpp>
#include <boost/graph/detail/d_ary_heap.hpp>
#include <boost/graph/properties.hpp>
#include <boost/iterator/iterator_facade.hpp>
#include <boost/property_map/property_map.hpp>
#include <cstdint>
#include <cstdlib>
#include <functional>
#include <memory>
#include <new>
#include <span>
#include <utility>
#include <vector>

#include "loopwright/base/ids.hpp"

namespace loopwright::reach {

inline constexpr std::uint32_t no_vertex = 0xffffffffU;

struct Label {
  std::int64_t cost = 0;
  std::int64_t ms = 0;
  std::uint32_t parent = no_vertex;
  std::uint32_t run = 0;
  std::size_t heap_position = 0;
  boost::default_color_type color = boost::white_color;
};

/// What one step of the search adds.
struct Step {
  std::int64_t cost = 0;
  std::int64_t ms = 0;
  bool allowed = true;
};

/// The labels of a large graph's vertices: memory that the system hands out zeroed, page by page as it is used.
class Labels {
 public:
  explicit Labels(std::size_t vertices)
      : labels_(
            static_cast<Label*>(std::calloc(std::max<std::size_t>(1, vertices), sizeof(Label)))) {
    if (!labels_) throw std::bad_alloc();
  }
  void start() {
    ++run_;
    settled_.clear();
  }
  [[nodiscard]] bool touched(std::uint32_t v) const { return labels_[v].run == run_; }
  [[nodiscard]] const Label& at(std::uint32_t v) const { return labels_[v]; }
  [[nodiscard]] bool reached(std::uint32_t v) const { return touched(v); }
  Label& touch(std::uint32_t v) {
    if (!touched(v)) labels_[v] = Label{.run = run_};
    return labels_[v];
  }
  void settle(std::uint32_t v) { settled_.push_back(v); }
  [[nodiscard]] const std::vector<std::uint32_t>& settled() const { return settled_; }
  /// v, its parent, and so on up to a seed.
  [[nodiscard]] std::vector<std::uint32_t> up_from(std::uint32_t v) const {
    std::vector<std::uint32_t> chain;
    for (; v != no_vertex; v = labels_[v].parent) chain.push_back(v);
    return chain;
  }

 private:
  struct Free {
    void operator()(Label* labels) const { std::free(labels); }
  };
  // Zeroed labels are of run 0, which no search has.
  std::unique_ptr<Label[], Free> labels_;
  std::vector<std::uint32_t> settled_;
  std::uint32_t run_ = 0;
};

// The property maps Boost asks for, over the labels.
struct ColorMap {
  using key_type = std::uint32_t;
  using value_type = boost::default_color_type;
  using reference = value_type;
  using category = boost::read_write_property_map_tag;
  Labels* labels;
};
inline boost::default_color_type get(const ColorMap& map, std::uint32_t v) {
  return map.labels->touched(v) ? map.labels->at(v).color : boost::white_color;
}
inline void put(const ColorMap& map, std::uint32_t v, boost::default_color_type color) {
  // Boost colours a vertex before it is known to lie within the bound; only labelled ones count.
  if (map.labels->touched(v)) map.labels->touch(v).color = color;
}

struct KeyMap {
  using key_type = std::uint32_t;
  using value_type = std::pair<std::int64_t, std::uint32_t>;
  using reference = value_type;
  using category = boost::readable_property_map_tag;
  const Labels* labels;
};
inline KeyMap::value_type get(const KeyMap& map, std::uint32_t v) {
  return {map.labels->at(v).cost, v};
}

struct HeapPositionMap {
  using key_type = std::uint32_t;
  using value_type = std::size_t;
  using reference = value_type;
  using category = boost::read_write_property_map_tag;
  Labels* labels;
};
inline std::size_t get(const HeapPositionMap& map, std::uint32_t v) {
  return map.labels->at(v).heap_position;
}
inline void put(const HeapPositionMap& map, std::uint32_t v, std::size_t position) {
  map.labels->touch(v).heap_position = position;
}

/// The heap, refusing vertices without a label (they lie beyond the bound).
class BoundedHeap {
 public:
  explicit BoundedHeap(Labels& labels)
      : labels_(&labels), heap_(KeyMap{&labels}, HeapPositionMap{&labels}) {}
  void push(std::uint32_t v) {
    if (labels_->touched(v)) heap_.push(v);
  }
  void update(std::uint32_t v) { heap_.update(v); }
  /// Nothing more is to be settled.
  void stop() { stopped_ = true; }
  [[nodiscard]] bool empty() const { return stopped_ || heap_.empty(); }
  [[nodiscard]] std::uint32_t top() const { return heap_.top(); }
  void pop() { heap_.pop(); }

 private:
  Labels* labels_;
  bool stopped_ = false;
  boost::d_ary_heap_indirect<std::uint32_t, 4, HeapPositionMap, KeyMap,
                             std::less<KeyMap::value_type>>
      heap_;
};

/// What a search leaves out, and when it ends.
struct Bounds {
  std::int64_t limit_ms = 0;
  std::function<bool(std::uint32_t v, std::int64_t ms)> keeps;  ///< empty: all within the limit
  std::span<const StateId> until;                               ///< empty: when nothing is left
};

/// Relaxes edges as Dijkstra's algorithm does. step(edge) says what an edge adds.
template <class Graph, class StepOf>
class Relax : public boost::default_bfs_visitor {
 public:
  using Edge = typename Graph::edge_descriptor;
  Relax(Labels& labels, BoundedHeap& heap, StepOf step, const Bounds& bounds)
      : labels_(&labels), heap_(&heap), step_(step), bounds_(&bounds), left_(bounds.until.size()) {}

  void examine_vertex(std::uint32_t v, const Graph&) {
    labels_->settle(v);
    if (left_ > 0 && std::binary_search(bounds_->until.begin(), bounds_->until.end(), StateId{v}) &&
        --left_ == 0)
      heap_->stop();
  }
  void tree_edge(const Edge& e, const Graph&) { relax(e); }
  void gray_target(const Edge& e, const Graph&) {
    if (relax(e)) heap_->update(e.to);
  }

 private:
  bool relax(const Edge& e) {
    const Step step = step_(e);
    const Label& from = labels_->at(e.from);
    if (!step.allowed || from.ms + step.ms > bounds_->limit_ms) return false;
    if (labels_->touched(e.to) && labels_->at(e.to).cost <= from.cost + step.cost) return false;
    const std::int64_t cost = from.cost + step.cost;
    const std::int64_t ms = from.ms + step.ms;
    if (bounds_->keeps && !bounds_->keeps(e.to, ms)) return false;
    Label& to = labels_->touch(e.to);
    to.cost = cost, to.ms = ms, to.parent = e.from;
    return true;
  }
  Labels* labels_;
  BoundedHeap* heap_;
  StepOf step_;
  const Bounds* bounds_;
  std::size_t left_;  ///< of those to settle before it ends
};

/// Runs the search; seeds are (vertex, label time) pairs already within the bound.
template <class Graph, class Seeds, class StepOf>
void search(const Graph& graph, const Seeds& seeds, StepOf step, const Bounds& bounds,
            Labels& labels) {
  labels.start();
  std::vector<std::uint32_t> sources;
  for (const auto& [vertex, ms] : seeds) {
    if (ms > bounds.limit_ms || (labels.touched(vertex) && labels.at(vertex).ms <= ms)) continue;
    if (!labels.touched(vertex)) sources.push_back(vertex);
    Label& label = labels.touch(vertex);
    label.cost = ms, label.ms = ms;
  }
  BoundedHeap heap(labels);
  Relax<Graph, StepOf> visitor(labels, heap, step, bounds);
  boost::breadth_first_visit(graph, sources.begin(), sources.end(), heap, visitor,
                             ColorMap{&labels});
}

/// Out-edges of a vertex as rows of a column: the edge iterator both graphs share.
struct RowEdge {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  std::uint32_t row = 0;
  friend bool operator==(const RowEdge&, const RowEdge&) = default;
};

template <class Graph>
class RowEdgeIterator : public boost::iterator_facade<RowEdgeIterator<Graph>, RowEdge,
                                                      boost::forward_traversal_tag, RowEdge> {
 public:
  RowEdgeIterator() = default;
  RowEdgeIterator(const Graph* graph, std::uint32_t from, std::uint32_t row)
      : graph_(graph), from_(from), row_(row) {}

 private:
  friend class boost::iterator_core_access;
  [[nodiscard]] RowEdge dereference() const { return {from_, graph_->target_of(row_), row_}; }
  void increment() { ++row_; }
  [[nodiscard]] bool equal(const RowEdgeIterator& other) const { return row_ == other.row_; }
  const Graph* graph_ = nullptr;
  std::uint32_t from_ = 0;
  std::uint32_t row_ = 0;
};

/// A Boost incidence graph over CSR columns: Rows gives first(v), last(v) and target_of(row).
template <class Rows>
struct RowGraph : Rows {
  using vertex_descriptor = std::uint32_t;
  using edge_descriptor = RowEdge;
  using directed_category = boost::directed_tag;
  using edge_parallel_category = boost::allow_parallel_edge_tag;
  using traversal_category = boost::incidence_graph_tag;
  using out_edge_iterator = RowEdgeIterator<RowGraph>;
  using degree_size_type = std::uint32_t;
  explicit RowGraph(Rows rows) : Rows(rows) {}

  friend std::pair<out_edge_iterator, out_edge_iterator> out_edges(std::uint32_t v,
                                                                   const RowGraph& g) {
    return {{&g, v, g.first(v)}, {&g, v, g.last(v)}};
  }
  friend std::uint32_t out_degree(std::uint32_t v, const RowGraph& g) {
    return g.last(v) - g.first(v);
  }
  friend std::uint32_t source(const RowEdge& e, const RowGraph&) { return e.from; }
  friend std::uint32_t target(const RowEdge& e, const RowGraph&) { return e.to; }
};

}  // namespace loopwright::reach
