// Dijkstra's algorithm (1959) over compact graphs, with a heap of keys that are never moved: a vertex that
// becomes cheaper is pushed again, and its dearer keys are passed over. Labels of 16 bytes keep hundreds of
// searches in the cache. (`tools/bench search` times answers against a plain search of Boost.Graph.)
//
//   LabelSearch search(vertices);  search.start();  search.reach(home, 0, 0);
//   search.run([&](std::uint32_t v) { for (…) search.reach(to, cost, ms, v); return true; });
//
// Rules: costs don't fall along an arc. Equal costs are settled by lower vertex number. One thread.
#pragma once

#include <algorithm>
#include <boost/heap/d_ary_heap.hpp>
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace loopwright::reach {

class LabelSearch {
 public:
  static constexpr std::uint32_t none = 0xffffffffU;
  struct Label {
    std::uint32_t cost = 0, ms = 0;
    std::uint32_t parent = none;
    std::uint32_t run = 0;  ///< that gave it; of another run: untouched, so that clearing is free
  };

  explicit LabelSearch(std::size_t vertices) : labels_(vertices) {}

  void start() {
    ++run_;
    settled_.clear();
    heap_.clear();
  }

  [[nodiscard]] bool touched(std::uint32_t v) const { return labels_[v].run == run_; }
  [[nodiscard]] const Label& at(std::uint32_t v) const { return labels_[v]; }
  [[nodiscard]] std::span<const std::uint32_t> settled() const { return settled_; }

  /// Labels v unless it has a label no dearer. Costs beyond 49 days count as that.
  void reach(std::uint32_t v, std::int64_t cost, std::int64_t ms, std::uint32_t parent = none) {
    const auto kept = static_cast<std::uint32_t>(std::min(most, cost));
    if (touched(v) && labels_[v].cost <= kept) return;
    labels_[v] = {kept, static_cast<std::uint32_t>(std::min(most, ms)), parent, run_};
    heap_.push(key(kept, v));
  }

  /// Settles vertices, the cheapest first; go_on(v) reaches what follows and says whether to go on.
  template <class GoOn>
  void run(GoOn go_on) {
    while (!heap_.empty()) {
      const std::uint64_t least = heap_.top();
      heap_.pop();
      const auto v = static_cast<std::uint32_t>(least);
      if (least != key(labels_[v].cost, v)) continue;
      settled_.push_back(v);
      if (!go_on(v)) return;
    }
  }

 private:
  static constexpr std::int64_t most = 0xffffffff;

  /// Four keys below each lie in one line of the cache (Johnson 1975; LaMarca and Ladner 1996).
  using Heap = boost::heap::d_ary_heap<std::uint64_t, boost::heap::arity<4>,
                                       boost::heap::compare<std::greater<>>>;

  static std::uint64_t key(std::uint32_t cost, std::uint32_t v) {
    return std::uint64_t{cost} << 32 | v;
  }

  std::vector<Label> labels_;
  std::vector<std::uint32_t> settled_;
  Heap heap_;
  std::uint32_t run_ = 0;
};

}  // namespace loopwright::reach
