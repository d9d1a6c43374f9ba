// Method: vertices are taken out one after the other while that makes no more arcs than it ends; each drive over
// one becomes an arc past it (the contraction of contraction hierarchies, Geisberger and others 2008, without
// its hierarchy). Of arcs between the same two the one that costs least stays, of equals the quickest.
#include "loopwright/reach/core_graph.hpp"

#include <algorithm>
#include <numeric>

#include "reach/label_search.hpp"

namespace loopwright::reach {

namespace {

using Vertex = LocalGraph::Vertex;

/// Rounds over what is left; later ones take out little (ours).
constexpr int rounds = 8;

class Taking {
 public:
  using Arc = CoreGraph::Arc;  // to: a vertex

  Taking(const LocalGraph& graph, std::span<const Vertex> kept,
         std::span<const std::int32_t> extra_ms, std::span<const std::int32_t> toll_ms)
      : out_(graph.size()), in_(graph.size()), kept_(graph.size(), 0), gone_(graph.size(), 0) {
    for (const Vertex v : kept) kept_[v] = 1;
    for (Vertex v = 0; v < graph.size(); ++v)
      for (const LocalGraph::Arc& arc : graph.out(v)) {
        const std::int64_t extra = extra_ms.empty() ? 0 : extra_ms[arc.to];
        const std::int32_t ms = arc.step_ms + (toll_ms.empty() ? 0 : toll_ms[arc.to]);
        add(v, {arc.to, ms, ms + extra});
      }
  }

  void run() {
    for (int round = 0; round < rounds; ++round)
      for (Vertex v = 0; v < out_.size(); ++v)
        if (kept_[v] == 0 && gone_[v] == 0 && is_cheap(v)) take_out(v);
  }

  [[nodiscard]] bool stays(Vertex v) const { return gone_[v] == 0; }
  [[nodiscard]] const std::vector<Arc>& out(Vertex v) const { return out_[v]; }

 private:
  [[nodiscard]] bool is_cheap(Vertex v) const {
    return out_[v].size() * in_[v].size() <= out_[v].size() + in_[v].size();
  }

  void add(Vertex from, const Arc& arc) {
    if (from == arc.to && kept_[from] == 0)
      return;  // coming back is of use only to what is asked for
    const auto same = std::find_if(out_[from].begin(), out_[from].end(),
                                   [&](const Arc& other) { return other.to == arc.to; });
    if (same == out_[from].end()) {
      out_[from].push_back(arc);
      in_[arc.to].push_back(from);
    } else if (std::pair(arc.cost, arc.ms) < std::pair(same->cost, same->ms)) {
      *same = arc;
    }
  }

  void take_out(Vertex v) {
    const std::vector<Arc> onward = std::move(out_[v]);
    const std::vector<Vertex> before = std::move(in_[v]);
    gone_[v] = 1;
    for (const Arc& arc : onward) std::erase(in_[arc.to], v);
    for (const Vertex from : before) {
      const auto to_v = std::find_if(out_[from].begin(), out_[from].end(),
                                     [v](const Arc& arc) { return arc.to == v; });
      const Arc there = *to_v;
      out_[from].erase(to_v);
      for (const Arc& arc : onward) add(from, {arc.to, there.ms + arc.ms, there.cost + arc.cost});
    }
    out_[v].clear();
    in_[v].clear();
  }

  std::vector<std::vector<Arc>> out_;
  std::vector<std::vector<Vertex>> in_;
  std::vector<std::uint8_t> kept_, gone_;
};

}  // namespace

CoreGraph::CoreGraph(const LocalGraph& graph, std::span<const Vertex> kept,
                     std::span<const std::int32_t> extra_ms, std::span<const std::int32_t> toll_ms)
    : graph_(&graph), row_(graph.size(), LocalGraph::none), first_{0} {
  Taking taking(graph, kept, extra_ms, toll_ms);
  taking.run();
  std::uint32_t rows = 0;
  for (Vertex v = 0; v < graph.size(); ++v)
    if (taking.stays(v)) row_[v] = rows++;
  for (Vertex v = 0; v < graph.size(); ++v) {
    if (!taking.stays(v)) continue;
    for (Arc arc : taking.out(v)) {
      arc.to = row_[arc.to];
      arcs_.push_back(arc);
    }
    first_.push_back(static_cast<std::uint32_t>(arcs_.size()));
  }
}

struct CoreSweep::Inside {
  const CoreGraph* core;
  LabelSearch search;
  std::vector<std::uint8_t> is_asked;  // by row
  std::size_t asked;

  Inside(const CoreGraph& of, std::span<const Vertex> asked_for)
      : core(&of), search(of.size()), is_asked(of.size(), 0), asked(asked_for.size()) {
    for (const Vertex v : asked_for) is_asked[of.row(v)] = 1;
  }

  void drive_on(std::uint32_t from, std::int64_t cost, std::int64_t ms, std::int64_t limit_ms) {
    for (const CoreGraph::Arc& arc : core->out(from))
      if (ms + arc.ms <= limit_ms) search.reach(arc.to, cost + arc.cost, ms + arc.ms, from);
  }

  void run(std::int64_t limit_ms) {
    std::size_t left = asked;
    search.run([&](std::uint32_t row) {
      if (is_asked[row] != 0 && --left == 0) return false;
      const LabelSearch::Label label = search.at(row);
      drive_on(row, label.cost, label.ms, limit_ms);
      return true;
    });
  }
};

CoreSweep::CoreSweep(const CoreGraph& core, std::span<const Vertex> asked)
    : inside_(new Inside(core, asked)) {}
CoreSweep::~CoreSweep() = default;

void CoreSweep::run(Vertex from, std::int64_t limit_ms) {
  inside_->search.start();
  const std::int32_t along_ms = inside_->core->along_ms(from);
  if (along_ms > limit_ms) return;
  inside_->search.reach(inside_->core->row(from), along_ms, along_ms);
  inside_->run(limit_ms);
}

void CoreSweep::run_after(Vertex from, std::int64_t limit_ms) {
  inside_->search.start();
  inside_->drive_on(inside_->core->row(from), 0, 0, limit_ms);
  inside_->run(limit_ms);
}

bool CoreSweep::reached(Vertex v) const {
  return inside_->search.touched(inside_->core->row(v));
}

std::int64_t CoreSweep::ms(Vertex v) const {
  return inside_->search.at(inside_->core->row(v)).ms;
}

}  // namespace loopwright::reach
