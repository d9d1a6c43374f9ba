// Where a loop's driver must be told, or must read a sign: the decisions of a drive (DEVELOPERS.md,
// Independent driving).
//
//   for (const Decision& decision : decisions_of(roads, loop)) …
//
// Rules: the loop is described; decisions are in driving order and don't overlap.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/independent.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// A junction with other roads, from the row that comes to it to the row that leaves it.
struct Decision {
  std::size_t entry = 0, exit = 0;     ///< rows; those between lie inside the junction
  bool needs_direction = false;        ///< the way taken isn't simply the road ahead
  wish::Direction direction = {};      ///< what would be told
  std::vector<StretchId> others = {};  ///< the other roads one could take, but for the way back
};

std::vector<Decision> decisions_of(const road::Roads& roads, const wish::Loop& loop);

/// By row: it lies inside a junction, so that nothing can begin or end on it.
std::vector<bool> rows_inside(const road::Roads& roads, const wish::Loop& loop);

/// What the signs on a stretch lead to, and its own number where that is signed by rule.
std::vector<std::string_view> followed_on(const road::Roads& roads, StretchId stretch);

}  // namespace loopwright::find
