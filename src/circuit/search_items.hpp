// What the search puts into a walk and takes out of it: single passes, and chains of passes that can
// only be driven one after the other.
//
// Method:
// 1. An exit with a single leg leads to one entry only: its passes are joined with each of that entry's
//    passes to a chain, up to four rows long.
// 2. Items that can't be driven from home and back within the time, or that count for nothing, are left
//    out; of equals the shortest stays.
// 3. Times to and from every item stand in rows, so that one gap is compared with all items in one go.
// Rules: legs of over six days are taken for no way, so that times fit 32 bits.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "loopwright/circuit/problem.hpp"

namespace loopwright::circuit {

/// Longer than any leg; two of them still fit.
inline constexpr std::int32_t far_ms = 1 << 29;

/// One group an item counts for.
struct Counting {
  std::uint32_t group = 0, goal = 0;
  std::int32_t offset_ms = 0;  ///< from the beginning of the item to that of the pass
};

struct Item {
  std::uint32_t first_row = 0, row_count = 0;    ///< in Items::rows
  std::uint32_t first_count = 0, end_count = 0;  ///< in Items::counts
  std::uint32_t entry = 0, exit = 0;
  std::int32_t inner_ms = 0;
  std::uint32_t spaced = 0;  ///< row of Items::spaced_sets
};

/// Rules: const once made; refers to the problem, which outlives it.
class Items {
 public:
  Items(const Problem& problem, std::span<const std::uint8_t> allowed);

  const Problem& problem;
  std::vector<Item> items;
  std::vector<std::uint32_t> rows;  ///< of passes
  std::vector<Counting> counts;
  /// Sets of goals with spacing that items have worth for; the first is empty.
  std::vector<std::vector<std::uint32_t>> spaced_sets;

  [[nodiscard]] std::span<const Counting> counts_of(const Item& item) const {
    return std::span(counts).subspan(item.first_count, item.end_count - item.first_count);
  }
  [[nodiscard]] std::span<const std::uint32_t> rows_of(const Item& item) const {
    return std::span(rows).subspan(item.first_row, item.row_count);
  }
  /// Leg from an exit (or home) to the entry of each item.
  [[nodiscard]] const std::int32_t* to(std::uint32_t exit) const {
    return to_.data() + std::size_t{exit} * items.size();
  }
  /// From the beginning of each item to an entry (or the end).
  [[nodiscard]] const std::int32_t* from(std::uint32_t entry) const {
    return from_.data() + std::size_t{entry} * items.size();
  }
  [[nodiscard]] std::int32_t leg(std::uint32_t exit, std::uint32_t entry) const;

 private:
  void add_chains(std::vector<std::uint32_t>& chain, std::span<const std::uint8_t> allowed);
  void add(std::span<const std::uint32_t> chain);
  std::uint32_t spaced_set(const Item& item);
  void drop_equals();
  void fill_tables();
  [[nodiscard]] bool is_forced(std::uint32_t exit) const {
    return only_[exit] < problem.entry_count;
  }

  std::vector<std::uint32_t> only_;  ///< the only entry an exit leads to, by exit
  std::vector<std::int32_t> to_, from_;
};

}  // namespace loopwright::circuit
