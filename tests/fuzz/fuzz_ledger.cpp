// libFuzzer: any bytes as a ledger of streets driven.
//
// 1. Reading refuses it, or all its rows are in bounds, and a day's use is in order, each street once.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "loopwright/file/ledger.hpp"
#include "trial.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace loopwright;
  using fuzz::require;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  std::vector<file::LedgerRow> rows;
  if (fuzz::refused([&] { rows = file::read_ledger(text, "driven.txt"); })) return 0;
  for (const file::LedgerRow& row : rows) require(row.way > 0 && row.times > 0);
  const auto uses = file::street_use(rows, rows.empty() ? Date{2026, 11, 28} : rows.back().day);
  for (std::size_t i = 1; i < uses.size(); ++i) require(uses[i - 1].way < uses[i].way);
  for (const wish::StreetUse& use : uses) require(use.today >= 0 && use.today <= use.month);
  return 0;
}
