// What is still to be counted, as one number, and a bound of the time that takes.
//
// Method (state-space relaxation with multipliers: Christofides, Mingozzi and Toth 1981, "State-space
// relaxation procedures for the computation of bounds to routing problems"; Held and Karp 1971 for the
// multipliers; both from memory):
// 1. A state is what each goal still needs and the exit we stand at. That a group counts only so often
//    is forgotten; instead each count of a group costs its multiplier, and the sum of multiplier × most
//    is taken off at the end.
// 2. An item comes with every choice of what it counts for, so that a pass of a group that is full can
//    still be driven for another goal.
// 3. From nothing needed upwards, the least time from each state to the end.
// 4. Multipliers rise where the best walk counts a group too often, and fall where it does too seldom.
// Rules: goals beyond the room of the table are forgotten too: the bound stays one.
#pragma once

#include <cstdint>
#include <vector>

#include "circuit/search_items.hpp"

namespace loopwright::circuit {

/// An item together with what of its counts is counted.
struct Move {
  struct Count {
    std::uint32_t group = 0, goal = 0;
  };
  std::uint32_t item = 0;
  std::uint32_t entry = 0, place = 0;  ///< rows of Needs::entries and Needs::exits
  std::int64_t inner_ms = 0;
  std::vector<Count> counts;
};

/// Rules: const but for the multipliers; refers to the items.
class Needs {
 public:
  explicit Needs(const Items& items);

  const Items& items;
  std::vector<std::uint32_t> entries, exits;  ///< in use; the last exit is home
  std::vector<Move> moves;                    ///< for each item all choices of what it counts for
  std::vector<Move> whole;                    ///< one for each item: all its counts
  std::vector<std::int64_t> most;             ///< by group: counts that can matter
  std::vector<std::int64_t> multiplier;       ///< by group, ms; 0 at first

  [[nodiscard]] std::uint32_t home() const { return static_cast<std::uint32_t>(exits.size() - 1); }
  [[nodiscard]] std::int64_t leg(std::uint32_t place, std::uint32_t entry) const {
    return legs_[place * entries.size() + entry];
  }
  [[nodiscard]] std::int64_t to_end(std::uint32_t place) const { return to_end_[place]; }

  /// Fills the table for the multipliers as they are.
  void reckon();
  /// Bound of the time, multipliers of counts included, from a place with this much needed by goal.
  [[nodiscard]] std::int64_t rest(const std::vector<int>& needed, std::uint32_t place) const;
  /// What all multipliers take off a bound.
  [[nodiscard]] std::int64_t taken_off() const;
  /// Counts by group of the walk that is best by the table.
  [[nodiscard]] std::vector<std::int64_t> best_counts() const;
  /// Steps one filling of the table takes.
  [[nodiscard]] std::int64_t steps() const;

 private:
  void add_moves(std::uint32_t item);
  void fill_legs();
  void lay_out();
  void reckon_row(std::size_t row, const std::vector<int>& needed);
  [[nodiscard]] std::size_t row_of(const std::vector<int>& needed) const;
  [[nodiscard]] std::size_t row_after(std::size_t row, const std::vector<int>& needed,
                                      const Move& move) const;
  [[nodiscard]] std::vector<int> needed_in(std::size_t row) const;
  [[nodiscard]] std::int64_t cost(const Move& move) const;

  std::vector<std::int64_t> legs_, to_end_;
  std::vector<std::size_t> stride_;  ///< by goal; 0: forgotten
  std::size_t rows_ = 1;
  std::vector<std::int64_t> table_;  ///< by row and exit
  std::vector<std::int64_t> by_entry_;
};

}  // namespace loopwright::circuit
