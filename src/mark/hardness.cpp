// How hard a chance is, and which way it turns.
//
// 1. src/rules/hardness.txt is read once into a table kind × movement. A row without a movement is
//    the kind's own value; a row with one overrides it for that movement.
// 2. A kind without a row is our own mistake: every kind that mapped_kinds() lists has one.
#include <array>
#include <cassert>
#include <cmath>
#include <stdexcept>
#include <string>

#include "loopwright/base/table.hpp"
#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::Movement;

constexpr std::size_t movement_count = static_cast<std::size_t>(Movement::round) + 1;
using HardnessTable = std::array<std::array<int, movement_count>, road::kind_count>;

// What is still "ahead" (DEVELOPERS.md: 45 degrees), and from where one is going back at a ring or
// mini.
constexpr double ahead_within_deg = 45;
constexpr double round_beyond_deg = 160;

Kind kind_cell(const TableRow& row) {
  const auto kind = road::parse_kind(row[0]);
  if (!kind) throw std::logic_error("hardness.txt: no kind named " + std::string(row[0]));
  return *kind;
}

/// Columns: kind | movement or "-" | hardness.
HardnessTable read_hardness() {
  HardnessTable table{};
  const auto rows = read_table(rule_text("hardness"));
  for (const TableRow& row : rows) {
    if (row.size() > 1 && row[1] == "-") {
      table[static_cast<std::size_t>(kind_cell(row))].fill(static_cast<int>(number_cell(row, 2)));
    }
  }
  for (const TableRow& row : rows) {
    const auto movement = road::parse_movement(row.at(1));
    if (!movement) continue;
    table[static_cast<std::size_t>(kind_cell(row))][static_cast<std::size_t>(*movement)] =
        static_cast<int>(number_cell(row, 2));
  }
  return table;
}

}  // namespace

int hardness_of(Kind kind, Movement movement) {
  static const HardnessTable table = read_hardness();
  const int hardness = table[static_cast<std::size_t>(kind)][static_cast<std::size_t>(movement)];
  if (hardness < 1 || hardness > 5) {
    throw std::logic_error("hardness.txt: no row for " + std::string(road::name(kind)));
  }
  return hardness;
}

Movement movement_of(double heading_change_deg) {
  assert(heading_change_deg >= -180 && heading_change_deg <= 180);
  if (std::abs(heading_change_deg) > round_beyond_deg) return Movement::round;
  if (std::abs(heading_change_deg) <= ahead_within_deg) return Movement::ahead;
  return heading_change_deg < 0 ? Movement::left : Movement::right;
}

}  // namespace loopwright::mark
