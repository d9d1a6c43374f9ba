// What the table src/rules/kinds.txt says of each kind of practice.
//
//   hardness_of(Kind::signals, Movement::right);  // 4
//
// Rules: every kind has a row of its own; a missing or odd row is our own mistake
// (std::logic_error). Movements are those of a country where one drives on the left.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "loopwright/road/kind.hpp"

namespace loopwright::road {

struct KindRow {
  Kind kind = Kind::roundabout;
  Movement movement = Movement::none;  ///< none: the kind's own row
  int hardness = 1;                    ///< 1 to 5
  std::vector<Kind> before;            ///< what a learner should have met first
  std::string_view sure;               ///< "certain", "inferred" or "both"
  int minutes = 0;                     ///< to stop and practise; 0 for what is passed by driving
  std::string_view told_by;            ///< how the map tells it
};

/// All rows in the table's order.
std::span<const KindRow> kind_rows();

/// The row of a kind, without a movement.
const KindRow& kind_row(Kind kind);

/// Hardness 1 to 5 by kind and movement.
int hardness_of(Kind kind, Movement movement);

/// True for what a lesson may do on a road and the road itself doesn't ask for: following the signs.
/// Its hardness keeps no beginner off the road.
constexpr bool is_of_choice(Kind kind) {
  return kind == Kind::independent_stretch;
}

}  // namespace loopwright::road
