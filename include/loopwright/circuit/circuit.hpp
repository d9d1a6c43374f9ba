// The best walk of a circuit problem: looked for, bounded, and proved where that can be done in time.
//
//   Walk walk = search(problem, {.rounds = 2000, .seed = 1});
//   Bound b = bound(problem, {.rounds = 40}, walk);       // may hand back a better walk
//   LeastTime t = least_time(problem, {.nodes = 200000}); // for counts alone
//
// Rules: all stop on counted work, never on the clock: the same problem gives the same answer on any
// machine and any number of threads. None reads or writes anything.
// Why three: wishes for as many as fit are bounded well by a linear programme and hardly ever proved;
// wishes for a few are proved by branch and bound on what has been visited, where the programme is weak.
#pragma once

#include <cstdint>
#include <optional>
#include <span>

#include "loopwright/circuit/problem.hpp"

namespace loopwright::circuit {

/// How hard to look. All counts.
struct SearchWork {
  int rounds = 1000;       ///< of taking out and putting in
  std::uint64_t seed = 1;  ///< of the dice
};

/// A good walk: most of the goals' `least` first, then most value, then least time; never beyond most_ms.
/// `start` may be empty; the answer is never worse than it. `allowed`: rows of passes that may be used,
/// by row; empty: all.
Walk search(const Problem& problem, const SearchWork& work, const Walk& start = {},
            std::span<const std::uint8_t> allowed = {});

struct BoundWork {
  int cut_rounds = 40;  ///< of looking for violated cuts, over all nodes of the tree
  int nodes = 200;      ///< of the tree
  /// Of the simplex method, over all programmes: iterations times columns, which is about what one costs.
  std::int64_t work = 2'000'000'000;
  SearchWork repair = {200, 1};  ///< for walks made from what the programme likes
};

struct Bound {
  /// No walk that meets every `least` has more value.
  std::int64_t value = 0;
  /// No walk at all meets every `least` within most_ms: value means nothing.
  bool impossible = false;
  /// The best walk seen, at least as good as the one handed in.
  Walk best;
};

/// Bounds the value from above: linear programme over pass and leg flows, cluster cuts, branching.
Bound bound(const Problem& problem, const BoundWork& work, const Walk& known);

struct LeastTimeWork {
  std::int64_t nodes = 2'000'000;  ///< of the tree
};

struct LeastTime {
  /// Every walk that meets every `least` takes at least so long; no_way: none does in any time.
  std::int64_t at_least_ms = 0;
  /// The quickest walk seen that does, whatever most_ms says; none: none was found.
  std::optional<Walk> walk;
  /// at_least_ms is that walk's time, or that there is none.
  bool proved = false;
};

/// The quickest walk that meets every `least`; worths and most_ms are not looked at.
LeastTime least_time(const Problem& problem, const LeastTimeWork& work);

}  // namespace loopwright::circuit
