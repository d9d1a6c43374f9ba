// Dinic's method (1970): layers by breadth, then paths that go down a layer each step, until none is left.
#include "circuit/bound_flow.hpp"

#include <algorithm>

namespace loopwright::circuit {

std::uint32_t Flow::add(std::uint32_t from, std::uint32_t to, std::int64_t capacity) {
  const auto row = static_cast<std::uint32_t>(arcs_.size());
  arcs_.push_back({to, first_[from], capacity, capacity});
  first_[from] = row;
  arcs_.push_back({from, first_[to], 0, 0});
  first_[to] = row + 1;
  return row;
}

bool Flow::layer() {
  level_.assign(first_.size(), none);
  level_[source_] = 0;
  std::vector<std::uint32_t> queue = {source_};
  for (std::size_t head = 0; head < queue.size() && level_[sink_] == none; ++head)
    for (std::uint32_t a = first_[queue[head]]; a != none; a = arcs_[a].next) {
      if (arcs_[a].left == 0 || level_[arcs_[a].to] != none) continue;
      level_[arcs_[a].to] = level_[queue[head]] + 1;
      queue.push_back(arcs_[a].to);
    }
  return level_[sink_] != none;
}

std::int64_t Flow::push(std::uint32_t at, std::int64_t most) {
  if (at == sink_) return most;
  std::int64_t pushed = 0;
  for (std::uint32_t& a = at_arc_[at]; a != none; a = arcs_[a].next) {
    if (arcs_[a].left == 0 || level_[arcs_[a].to] != level_[at] + 1) continue;
    const std::int64_t more = push(arcs_[a].to, std::min(most - pushed, arcs_[a].left));
    arcs_[a].left -= more;
    arcs_[a ^ 1].left += more;
    pushed += more;
    if (pushed == most) break;  // the arc may have room: stay on it
  }
  return pushed;
}

std::int64_t Flow::run(std::uint32_t source, std::uint32_t sink, std::int64_t enough) {
  source_ = source;
  sink_ = sink;
  for (Arc& arc : arcs_) arc.left = arc.capacity;
  std::int64_t flow = 0;
  while (flow < enough && layer()) {
    at_arc_ = first_;
    flow += push(source_, enough - flow);
  }
  return flow;
}

std::vector<std::uint8_t> Flow::beyond_source() const {
  std::vector<std::uint8_t> beyond(first_.size(), 1);
  beyond[source_] = 0;
  std::vector<std::uint32_t> stack = {source_};
  while (!stack.empty()) {
    const std::uint32_t at = stack.back();
    stack.pop_back();
    for (std::uint32_t a = first_[at]; a != none; a = arcs_[a].next) {
      if (arcs_[a].left == 0 || beyond[arcs_[a].to] == 0) continue;
      beyond[arcs_[a].to] = 0;
      stack.push_back(arcs_[a].to);
    }
  }
  return beyond;
}

std::vector<std::uint8_t> Flow::before_sink() const {
  std::vector<std::uint8_t> before(first_.size(), 0);
  before[sink_] = 1;
  std::vector<std::uint32_t> stack = {sink_};
  while (!stack.empty()) {
    const std::uint32_t at = stack.back();
    stack.pop_back();
    for (std::uint32_t a = first_[at]; a != none; a = arcs_[a].next) {
      if (arcs_[a ^ 1].left == 0 || before[arcs_[a].to] != 0) continue;
      before[arcs_[a].to] = 1;
      stack.push_back(arcs_[a].to);
    }
  }
  return before;
}

}  // namespace loopwright::circuit
