// 1. A line is cut at its blanks into three parts; each is read whole or the line is refused.
// 2. Uses are summed by way in a map, which is in order.
#include "loopwright/file/ledger.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <string>

#include "loopwright/base/error.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::file {
namespace {

constexpr int month_days = 30;

std::vector<std::string_view> parts_of(std::string_view line) {
  std::vector<std::string_view> parts;
  while (!(line = trim(line)).empty()) {
    const std::size_t end = std::min(line.find_first_of(" \t"), line.size());
    parts.push_back(line.substr(0, end));
    line.remove_prefix(end);
  }
  return parts;
}

std::optional<LedgerRow> row_of(std::string_view line) {
  const auto parts = parts_of(line);
  if (parts.size() != 3) return std::nullopt;
  const auto day = read_date(parts[0]);
  const auto way = read_int64(parts[1]);
  const auto times = read_int(parts[2]);
  // Ways below zero are those of a map that somebody drew and didn't upload.
  if (!day || !way || *way == 0 || !times || *times < 1 || *times > most_times_a_line)
    return std::nullopt;
  return LedgerRow{*day, *way, *times};
}

/// Of a long line its beginning.
std::string quoted(std::string_view line) {
  constexpr std::size_t shown = 40;
  const std::string text = printable(line);
  std::size_t end = std::min(shown, text.size());
  while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xc0U) == 0x80U) ++end;
  return "'" + text.substr(0, end) + (end < text.size() ? "…'" : "'");
}

}  // namespace

std::vector<LedgerRow> read_ledger(std::string_view text, std::string_view file_name) {
  std::vector<LedgerRow> rows;
  int number = 0;
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  while (!text.empty()) {
    ++number;
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view whole = text.substr(0, end);
    const std::string_view line = trim(whole.substr(0, whole.find('#')));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty()) continue;
    const auto row = row_of(line);
    if (!row) {
      throw InputError(std::string(file_name) + ", line " + std::to_string(number) +
                       ": takes a day, an OSM way and how often it was driven (1 to " +
                       std::to_string(most_times_a_line) + "), such as 2026-11-28 123456 2, not " +
                       quoted(line));
    }
    rows.push_back(*row);
  }
  return rows;
}

std::vector<wish::StreetUse> street_use(const std::vector<LedgerRow>& rows, Date day) {
  const std::int64_t last = days_since_epoch(day);
  std::map<std::int64_t, wish::StreetUse> by_way;
  for (const LedgerRow& row : rows) {
    const std::int64_t at = days_since_epoch(row.day);
    if (at > last || at <= last - month_days) continue;
    wish::StreetUse& use = by_way[row.way];
    use.way = row.way;
    use.month += row.times;
    if (at == last) use.today += row.times;
  }
  std::vector<wish::StreetUse> uses;
  for (const auto& [way, use] : by_way) uses.push_back(use);
  return uses;
}

}  // namespace loopwright::file
