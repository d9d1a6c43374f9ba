// 1. src/rules/kinds.txt is read once; a cell that names no kind is our own mistake.
// 2. A row without a movement is the kind's own; a row with one overrides its hardness.
#include "loopwright/road/kind_table.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::road {
namespace {

Kind kind_in(std::string_view cell) {
  const auto kind = parse_kind(cell);
  if (!kind) throw std::logic_error("kinds.txt: no kind named '" + std::string(cell) + "'");
  return *kind;
}

std::vector<Kind> kinds_in(std::string_view cell) {
  std::vector<Kind> kinds;
  if (cell == "-") return kinds;
  for (const std::string_view name : split(cell, ',')) kinds.push_back(kind_in(name));
  return kinds;
}

/// Columns: kind | movement or "-" | hardness | before it | sure | minutes | the map tells it by.
std::vector<KindRow> read_rows() {
  std::vector<KindRow> rows;
  for (const TableRow& row : read_table(rule_text("kinds"))) {
    if (row.size() != 7) throw std::logic_error("kinds.txt: a row has not seven cells");
    rows.push_back({kind_in(row[0]), parse_movement(row[1]).value_or(Movement::none),
                    static_cast<int>(number_cell(row, 2)), kinds_in(row[3]), row[4],
                    static_cast<int>(number_cell(row, 5)), row[6]});
  }
  return rows;
}

const KindRow* find_row(Kind kind, Movement movement) {
  const auto rows = kind_rows();
  const auto found = std::ranges::find_if(
      rows, [&](const KindRow& row) { return row.kind == kind && row.movement == movement; });
  return found == rows.end() ? nullptr : &*found;
}

}  // namespace

std::span<const KindRow> kind_rows() {
  static const std::vector<KindRow> rows = read_rows();
  return rows;
}

const KindRow& kind_row(Kind kind) {
  if (const KindRow* row = find_row(kind, Movement::none)) return *row;
  throw std::logic_error("kinds.txt: no row for " + std::string(name(kind)));
}

int hardness_of(Kind kind, Movement movement) {
  const KindRow* row = find_row(kind, movement);
  return row != nullptr ? row->hardness : kind_row(kind).hardness;
}

}  // namespace loopwright::road
