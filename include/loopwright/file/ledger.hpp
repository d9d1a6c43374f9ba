// The ledger: how often streets were driven on other lessons, over all pupils, as its owner hands it in.
//
//   read_ledger("2026-11-27 9100000000071 2\n", "driven.txt")
//
// Rules: a line for each street and day: the day, its OSM way, how often it was driven, parted by tabs or
// blanks. '#' begins a comment, empty lines are passed over. Several lines of one street and day add up.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::file {

/// Of one line; more is a slip of the pen. Far beyond what caps allow of a street (src/rules/caps.txt).
inline constexpr int most_times_a_line = 100;

struct LedgerRow {
  Date day;
  std::int64_t way = 0;
  int times = 0;  ///< 1 to most_times_a_line
  friend bool operator==(const LedgerRow&, const LedgerRow&) = default;
};

/// In the order of the lines. Throws InputError naming the file and the line.
std::vector<LedgerRow> read_ledger(std::string_view text, std::string_view file_name);

/// What a lesson on that day must know: the uses of that day, and of the 30 days that end with it; ascending
/// by way, each once. What lies after that day doesn't count.
std::vector<wish::StreetUse> street_use(const std::vector<LedgerRow>& rows, Date day);

}  // namespace loopwright::file
