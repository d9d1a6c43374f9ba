// Method: steps of time one after the other; in each, what changed there goes on over every arc (labels with a
// resource, as in shortest paths under constraints: Desrochers 1988, from memory).
//   Ways: at a vertex, of each step the cheapest label.
//   Lengths: at a vertex, of each step the hull of all times that come to it. A hull goes on whole and is cut at the
//   steps: by induction over its arcs each drive's time lies in some hull, so no drive has a length outside of them.
#include "loopwright/reach/slow_ways.hpp"

#include <algorithm>
#include <limits>

namespace loopwright::reach {

namespace {

using Vertex = LocalGraph::Vertex;

// Ours: so many steps whatever the time, so that long ones take no more work than they must. Of three minutes one
// of a way is a second.
constexpr std::size_t way_steps = 180, hull_steps = 720;

/// By vertex that a run comes to, a row of cells, one for each step of time.
template <class Cell>
class TimeGrid {
 public:
  TimeGrid(std::size_t vertices, std::size_t steps) : row_(vertices, none), queue_(steps + 1) {}

  void begin(std::int64_t most_ms) {
    for (const Vertex v : touched_) row_[v] = none;
    touched_.clear();
    cells_.clear();
    for (auto& each : queue_) each.clear();
    step_ms_ = static_cast<std::int32_t>(most_ms / static_cast<std::int64_t>(steps() - 1)) + 1;
  }
  [[nodiscard]] std::size_t steps() const { return queue_.size(); }
  [[nodiscard]] std::int32_t step_ms() const { return step_ms_; }
  [[nodiscard]] std::int64_t begins_ms(std::size_t step) const {
    return static_cast<std::int64_t>(step) * step_ms_;
  }
  [[nodiscard]] std::size_t step_of(std::int32_t ms) const {
    return static_cast<std::size_t>(ms / step_ms_);
  }
  [[nodiscard]] std::span<Cell> of(Vertex v) {
    if (row_[v] == none) {
      row_[v] = static_cast<std::uint32_t>(touched_.size());
      touched_.push_back(v);
      cells_.resize(cells_.size() + steps());
    }
    return std::span(cells_).subspan(row_[v] * steps(), steps());
  }
  /// Empty: the run didn't come there.
  [[nodiscard]] std::span<const Cell> seen(Vertex v) const {
    if (row_[v] == none) return {};
    return std::span(cells_).subspan(row_[v] * steps(), steps());
  }
  /// What changed and has to go on, by step.
  [[nodiscard]] std::vector<std::uint32_t>& queue(std::size_t step) { return queue_[step]; }

 private:
  static constexpr std::uint32_t none = ~std::uint32_t{0};
  std::int32_t step_ms_ = 1;
  std::vector<std::uint32_t> row_;
  std::vector<Vertex> touched_;
  std::vector<Cell> cells_;
  std::vector<std::vector<std::uint32_t>> queue_;
};

/// There is time to come from the end of the vertex to what is asked for.
bool comes_in_time(const LocalGraph& graph, Vertex v, std::int64_t ms, const SlowFrom& from) {
  return from.back->reached(v) && ms + from.back->ms(v) - graph.along_ms(v) <= from.most_ms;
}

}  // namespace

struct SlowWays::Inside {
  static constexpr std::uint32_t none = ~std::uint32_t{0};
  struct Label {
    Vertex at = 0;
    std::uint32_t before = none;
    std::int32_t ms = 0;
    std::int64_t cost = 0;
    std::uint64_t driven =
        0;  ///< a bit for each vertex of the way but its first; several may share one
  };
  struct Cell {
    std::uint32_t label = none;
  };

  explicit Inside(const LocalGraph& g) : graph(g), best(g.size(), way_steps) {}

  static std::uint64_t bit_of(Vertex v) { return std::uint64_t{1} << (v % 64); }

  /// But the way's first vertex.
  [[nodiscard]] bool has_driven(std::uint32_t row, Vertex v) const {
    if ((labels[row].driven & bit_of(v)) == 0) return false;
    for (; labels[row].before != none; row = labels[row].before)
      if (labels[row].at == v) return true;
    return false;
  }

  void push(const Label& label, const SlowFrom& from) {
    if (!comes_in_time(graph, label.at, label.ms, from)) return;
    const std::size_t step = best.step_of(label.ms);
    Cell& cell = best.of(label.at)[step];
    if (cell.label != none) {
      const Label& other = labels[cell.label];
      if (other.cost < label.cost || (other.cost == label.cost && other.ms <= label.ms)) return;
    }
    cell.label = static_cast<std::uint32_t>(labels.size());
    labels.push_back(label);
    best.queue(step).push_back(cell.label);
  }

  void go_on(std::uint32_t row, const SlowFrom& from) {
    for (const LocalGraph::Arc& arc : graph.out(labels[row].at)) {
      if (has_driven(row, arc.to)) continue;
      Label next = labels[row];
      next.at = arc.to;
      next.before = row;
      next.driven |= bit_of(arc.to);
      next.ms += arc.step_ms;
      next.cost += arc.step_ms + (from.extra_ms.empty() ? 0 : from.extra_ms[arc.to]);
      push(next, from);
    }
  }

  void run(const SlowFrom& from) {
    best.begin(from.most_ms);
    labels.clear();
    searched_ms = from.most_ms;
    const std::int32_t along_ms = from.at_end ? 0 : graph.along_ms(from.from);
    labels.push_back({from.from, none, along_ms, along_ms, 0});
    if (!comes_in_time(graph, from.from, along_ms, from)) return;
    if (!from.at_end) best.of(from.from)[best.step_of(along_ms)].label = 0;
    go_on(0, from);
    std::int64_t work = 0;
    for (std::size_t step = 0; step < best.steps(); ++step) {
      if (work > from.most_work) {
        searched_ms = best.begins_ms(step);
        return;
      }
      for (std::size_t k = 0; k < best.queue(step).size(); ++k) {
        const std::uint32_t row = best.queue(step)[k];
        if (best.of(labels[row].at)[step].label != row) continue;
        go_on(row, from);
        ++work;
      }
    }
  }

  const LocalGraph& graph;
  TimeGrid<Cell> best;
  std::vector<Label> labels;
  std::int64_t searched_ms = 0;
};

SlowWays::SlowWays(const LocalGraph& graph) : inside_(std::make_unique<Inside>(graph)) {}
SlowWays::~SlowWays() = default;
SlowWays::SlowWays(SlowWays&&) noexcept = default;

void SlowWays::run(const SlowFrom& from) {
  inside_->run(from);
}

std::int64_t SlowWays::searched_ms() const {
  return inside_->searched_ms;
}

std::vector<std::int32_t> SlowWays::lengths(Vertex to) const {
  std::vector<std::int32_t> lengths;
  std::int64_t least_cost = std::numeric_limits<std::int64_t>::max();
  const auto cells = inside_->best.seen(to);
  for (std::size_t step = cells.size(); step-- > 0;) {
    if (cells[step].label == Inside::none) continue;
    const Inside::Label& label = inside_->labels[cells[step].label];
    if (label.cost >= least_cost || label.ms > inside_->searched_ms) continue;
    least_cost = label.cost;
    lengths.push_back(label.ms);
  }
  std::reverse(lengths.begin(), lengths.end());
  return lengths;
}

std::vector<Vertex> SlowWays::way(Vertex to, std::int64_t least_ms) const {
  const std::vector<Inside::Label>& labels = inside_->labels;
  std::uint32_t best = Inside::none;
  for (const Inside::Cell& cell : inside_->best.seen(to)) {
    if (cell.label == Inside::none || labels[cell.label].ms < least_ms) continue;
    if (best == Inside::none || labels[cell.label].cost < labels[best].cost) best = cell.label;
  }
  std::vector<Vertex> way;
  for (; best != Inside::none; best = labels[best].before) way.push_back(labels[best].at);
  std::reverse(way.begin(), way.end());
  return way;
}

struct AnyLengths::Inside {
  struct Hull {
    std::int32_t from_ms = 0, to_ms = -1;  ///< empty
    bool is_queued = false;
  };

  explicit Inside(const LocalGraph& g) : graph(g), hulls(g.size(), hull_steps) {}

  void come_to(Vertex v, std::int32_t from_ms, std::int32_t to_ms, const SlowFrom& from) {
    if (!comes_in_time(graph, v, from_ms, from)) return;
    const std::span<Hull> row = hulls.of(v);
    const std::int32_t width = hulls.step_ms();
    for (std::size_t step = hulls.step_of(from_ms); step < row.size(); ++step) {
      const std::int32_t begin = static_cast<std::int32_t>(step) * width;
      if (begin > to_ms) return;
      const std::int32_t low = std::max(from_ms, begin), high = std::min(to_ms, begin + width - 1);
      Hull& hull = row[step];
      const bool is_empty = hull.to_ms < 0;
      if (!is_empty && low >= hull.from_ms && high <= hull.to_ms) continue;
      hull.from_ms = is_empty ? low : std::min(hull.from_ms, low);
      hull.to_ms = std::max(hull.to_ms, high);
      if (!hull.is_queued) hulls.queue(step).push_back(v);
      hull.is_queued = true;
    }
  }

  void go_on(Vertex v, std::int32_t from_ms, std::int32_t to_ms, const SlowFrom& from) {
    for (const LocalGraph::Arc& arc : graph.out(v))
      come_to(arc.to, from_ms + arc.step_ms, to_ms + arc.step_ms, from);
  }

  void run(const SlowFrom& from) {
    hulls.begin(from.most_ms);
    searched_ms = from.most_ms;
    const std::int32_t along_ms = graph.along_ms(from.from);
    if (from.at_end)
      go_on(from.from, 0, 0, from);
    else
      come_to(from.from, along_ms, along_ms, from);
    std::int64_t work = 0;
    for (std::size_t step = 0; step < hulls.steps(); ++step) {
      if (work > from.most_work) {
        searched_ms = hulls.begins_ms(step);
        return;
      }
      for (std::size_t k = 0; k < hulls.queue(step).size(); ++k) {
        const Vertex v = hulls.queue(step)[k];
        Hull& hull = hulls.of(v)[step];
        hull.is_queued = false;
        const Hull now = hull;
        go_on(v, now.from_ms, now.to_ms, from);
        ++work;
      }
    }
  }

  const LocalGraph& graph;
  TimeGrid<Hull> hulls;
  std::int64_t searched_ms = 0;
};

AnyLengths::AnyLengths(const LocalGraph& graph) : inside_(std::make_unique<Inside>(graph)) {}
AnyLengths::~AnyLengths() = default;
AnyLengths::AnyLengths(AnyLengths&&) noexcept = default;

void AnyLengths::run(const SlowFrom& from) {
  inside_->run(from);
}

std::int64_t AnyLengths::searched_ms() const {
  return inside_->searched_ms;
}

std::vector<LengthSpan> AnyLengths::lengths(Vertex to) const {
  std::vector<LengthSpan> spans;
  for (const Inside::Hull& hull : inside_->hulls.seen(to)) {
    if (hull.to_ms < 0 || hull.from_ms >= inside_->searched_ms) continue;
    if (!spans.empty() && spans.back().to_ms + 1 >= hull.from_ms)
      spans.back().to_ms = hull.to_ms;
    else
      spans.push_back({hull.from_ms, hull.to_ms});
  }
  return spans;
}

}  // namespace loopwright::reach
