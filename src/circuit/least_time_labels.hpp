// The quickest walk by best-first search over what has been counted and where we stand.
//
// Method (labels with dominance as in resource-constrained shortest paths, Irnich and Desaulniers 2005;
// best first by Hart, Nilsson and Raphael 1968; from memory):
// 1. A label is a beginning of a walk: the exit it stands at, what each goal still needs, and how often
//    each group has been counted whose counts can run out while its goal needs more.
// 2. The label of least bound (least_time_needs.hpp) goes on to every item that counts for something.
// 3. A label is dropped when its bound reaches the best walk's time, or another one at the same exit
//    with the same needs has counted no group more often and took no longer.
// 4. Empty queue: the best walk is the quickest. Work used up: the least bound in the queue is the bound.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <queue>
#include <unordered_map>
#include <vector>

#include "circuit/least_time_needs.hpp"

namespace loopwright::circuit {

/// Rules: one use.
class Labels {
 public:
  /// `most_ms`: walks that take as long or longer are of no interest.
  Labels(const Needs& needs, std::int64_t most_ms);
  /// Looks at so many labels at most.
  void run(std::int64_t most_labels);

  /// No walk of the kind wanted is quicker; capped by most_ms.
  [[nodiscard]] std::int64_t bound_ms() const { return bound_ms_; }
  /// Items of the quickest walk found under most_ms.
  [[nodiscard]] const std::optional<std::vector<std::uint32_t>>& best() const { return best_; }

 private:
  using Counted = std::array<std::uint64_t, 4>;  ///< as many ones by group as it was counted
  struct Label {
    Counted counted{};
    std::int64_t ms = 0, counted_ms = 0;  ///< driven; multipliers of its counts
    std::uint32_t needs = 0;              ///< row of needs_seen_
    std::uint32_t place = 0;
    std::uint32_t before = 0, item = 0;
    bool dropped = false;
  };
  struct Queued {
    std::int64_t bound_ms = 0;
    int needed = 0;
    std::uint32_t label = 0;
    bool operator<(const Queued& o) const {
      if (bound_ms != o.bound_ms) return bound_ms > o.bound_ms;
      return needed != o.needed ? needed > o.needed : label < o.label;
    }
  };

  void lay_out();
  std::uint32_t needs_row(const std::vector<int>& needed);
  void go_on(std::uint32_t from, const Move& move);
  bool count(Label& label, const Move& move);
  void clear_met(Label& label) const;
  void finish(const Label& label);
  bool is_worse(const Label& label);
  void add(const Label& label);

  const Needs& needs_;
  std::int64_t most_ms_, taken_off_, bound_ms_ = 0;
  std::vector<std::uint32_t> first_bit_;  ///< by group; none_bit: not followed
  std::vector<Counted> bits_of_goal_;
  std::vector<Label> labels_;
  std::vector<std::vector<int>> needs_seen_;
  std::unordered_map<std::uint64_t, std::uint32_t> needs_rows_;
  std::unordered_map<std::uint64_t, std::vector<std::uint32_t>> standing_;  ///< by needs and exit
  std::priority_queue<Queued> queue_;
  std::vector<int> needed_;
  std::optional<std::vector<std::uint32_t>> best_;
};

}  // namespace loopwright::circuit
