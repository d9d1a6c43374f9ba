// Method:
// 1. Look the code up among the regions whose law we know (rows "own").
// 2. Otherwise it must be in the list of countries and not be divided into regions; side and unit
//    come from the lists "left" and "mph".
// The table is read again at each call: it is asked for once or twice in a run.
#include "loopwright/base/region.hpp"

#include <algorithm>
#include <stdexcept>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright {
namespace {

std::string upper(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return result;
}

Side read_side(std::string_view text) {
  if (text == name(Side::left)) return Side::left;
  if (text == name(Side::right)) return Side::right;
  throw std::logic_error("regions: no side called '" + std::string(text) + "'");
}

/// True when a row of this list holds the code.
bool listed(const std::vector<TableRow>& rows, std::string_view list, std::string_view code) {
  return std::any_of(rows.begin(), rows.end(), [&](const TableRow& row) {
    if (row.at(0) != list) return false;
    const auto codes = split(row.at(1), ' ');
    return std::find(codes.begin(), codes.end(), code) != codes.end();
  });
}

}  // namespace

std::optional<Region> find_region(std::string_view typed) {
  const std::string code = upper(typed);
  const std::vector<TableRow> rows = read_table(rule_text("regions"));
  for (const TableRow& row : rows) {
    if (row.at(0) == "own" && row.at(1) == code) {
      return Region{code, read_side(row.at(2)), parse_speed_unit(row.at(3)).value(), true};
    }
  }
  if (code.empty() || !listed(rows, "country", code) || listed(rows, "divided", code)) {
    return std::nullopt;
  }
  return Region{code, listed(rows, "left", code) ? Side::left : Side::right,
                listed(rows, "mph", code) ? SpeedUnit::mph : SpeedUnit::kmh, false};
}

std::string_view name(Side side) {
  return side == Side::left ? "left" : "right";
}

std::string_view name(SpeedUnit unit) {
  return unit == SpeedUnit::mph ? "mph" : "km/h";
}

std::optional<SpeedUnit> parse_speed_unit(std::string_view text) {
  if (text == name(SpeedUnit::mph)) return SpeedUnit::mph;
  if (text == name(SpeedUnit::kmh)) return SpeedUnit::kmh;
  return std::nullopt;
}

}  // namespace loopwright
