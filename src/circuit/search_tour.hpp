// A walk in the making: items in order, and what the clock says of them.
//
// Method: one pass over the items as in evaluate.cpp, but the waits are chosen on the way: an item waits
// on the leg to it until it is spaced for all goals it could have worth for, or for one of them only, or
// for none (Patience).
#pragma once

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

#include "circuit/search_items.hpp"

namespace loopwright::circuit {

/// What an item waits for: none, all, or all_but_first + k: the k-th of its counts alone.
using Patience = std::uint8_t;
inline constexpr Patience none = 0, all = 1, single = 2;

struct Visit {
  std::uint32_t item = 0;
  Patience patience = all;
};

/// Better is: fewer missing, then more value, then less time.
struct Score {
  int missing = std::numeric_limits<int>::max();
  std::int64_t value = 0;
  std::int64_t ms = no_way;
  [[nodiscard]] bool fits(const Problem& p) const { return ms <= p.most_ms && ms < far_ms; }
  [[nodiscard]] bool gives_more_than(const Score& o) const {
    return missing != o.missing ? missing < o.missing : value > o.value;
  }
  [[nodiscard]] bool better_than(const Score& o) const {
    return gives_more_than(o) || (missing == o.missing && value == o.value && ms < o.ms);
  }
};

/// When each visit begins and how long it is waited for before. The last row is the end.
struct VisitTimes {
  std::vector<std::int64_t> begin, wait;
};

/// Rules: one per thread; `counted`, `worth` and `got` are those of the last walk timed.
class Clock {
 public:
  explicit Clock(const Items& items);
  /// Rules: a walk that can't be driven has ms of at least far_ms.
  Score time(std::span<const Visit> visits, VisitTimes* times = nullptr);

  std::vector<int> counted;        ///< by group: passes
  std::vector<std::size_t> worth;  ///< by group: worths taken
  std::vector<int> got;            ///< by goal
  /// What the next pass of a group is worth, its spacing not looked at; 0: nothing.
  [[nodiscard]] std::int64_t next_worth(std::uint32_t group) const;

 private:
  [[nodiscard]] std::int64_t ready(const Item& item, Patience patience) const;
  [[nodiscard]] std::int64_t later(std::uint32_t exit, std::uint32_t entry, std::int64_t leaves,
                                   std::int64_t may_begin) const;
  void count(const Item& item, std::int64_t begins);
  void reset();

  const Items& items_;
  std::vector<std::int64_t> next_ms_;
  std::vector<int> of_cap_;  ///< by cap: worths taken
  std::vector<std::uint32_t> touched_;
  std::int64_t value_ = 0;
};

/// The walk of these visits, its waits as the clock chooses them.
Walk walk_of(const Items& items, Clock& clock, std::span<const Visit> visits);

/// The visits of a walk, rows that are no items left out.
std::vector<Visit> visits_of(const Items& items, const Walk& walk);

}  // namespace loopwright::circuit
