// The quickest ways between entries that a network is pruned by.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "loopwright/circuit/problem.hpp"

namespace loopwright::circuit {

/// From the beginning of a pass to that of the next at an entry, at least least_ms; to the end (entry_count), which has
/// no least.
std::int64_t begin_to_begin(const Problem& problem, const Pass& pass, std::uint32_t to,
                            std::int64_t least_ms);

/// The legs of a walk that holds only passes which have worth or count, as Problem::legs: those from a pass to the next
/// of the same goal take what its spacing needs, where both can only have worth for that goal.
std::vector<std::int64_t> legs_between_counted(const Problem& problem);

/// From the beginning of a pass to what comes after it.
struct QuickestWays {
  /// At least least_ms.
  QuickestWays(const Problem& problem, std::int64_t least_ms);
  /// By these legs, instead of the problem's.
  QuickestWays(const Problem& problem, std::span<const std::int64_t> legs);

  /// From the beginning of some pass at one entry to the other entry, or to the end (entry_count): the
  /// quickest of the passes. The way to the end has no least.
  [[nodiscard]] std::int64_t between(std::uint32_t entry, std::uint32_t to) const {
    return between_[static_cast<std::size_t>(entry) * width_ + to];
  }
  /// From this entry to the end through one pass.
  [[nodiscard]] std::int64_t to_end(std::uint32_t entry) const { return between(entry, end_); }

 private:
  template <class Ms>
  void measure(const Problem& problem, Ms ms);

  std::uint32_t end_ = 0;
  std::size_t width_ = 0;
  std::vector<std::int64_t> between_;
};

/// Sum of times, no_way when one of them is.
inline std::int64_t plus(std::int64_t a, std::int64_t b) {
  return a >= no_way || b >= no_way ? no_way : a + b;
}

}  // namespace loopwright::circuit
