// The roads of a part of the map.
//
//   for (PieceId piece : pieces_in(roads, {{south, west}, {north, east}})) draw(piece);
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/base/point.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::road {

/// Rules: the first corner lies nowhere north or east of the second: a box over the 180th meridian is two.
struct Box {
  Point south_west, north_east;
};

/// Cells of the grid that follow each other from west to east, both ends included.
struct CellRun {
  std::uint64_t west = 0, east = 0;
};
/// The cells that a box touches, a run for each row, from the south.
std::vector<CellRun> cell_runs(const Box& box);

/// Pieces that the grid lists in a cell which the box touches: all that come into it, and some that pass close by;
/// ascending, each once.
std::vector<PieceId> pieces_in(const Roads& roads, const Box& box);

}  // namespace loopwright::road
