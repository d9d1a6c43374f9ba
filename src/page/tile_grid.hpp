// Which part of the earth a map tile shows, and where in it a place lies.
//
// Rules: the square tiles of web maps: the earth as a square of 2^zoom by 2^zoom tiles, from the north-west, in the
// spherical Mercator projection (EPSG:3857; Vector Tile Specification 2.1, section 3).
#pragma once

#include "loopwright/page/tiles.hpp"
#include "loopwright/road/in_box.hpp"

namespace loopwright::page {

/// A place inside a tile, in the units of its extent, right and down from its north-west corner; beyond 0 to extent
/// it lies outside.
struct Spot {
  double x = 0, y = 0;
};

/// The units along a tile's side.
inline constexpr int tile_extent = 4096;

Spot spot_in(const TileAddress& tile, Point at);

/// The part of the earth that a tile shows, with a margin in its units all round, cut off at the edge of the map.
road::Box box_of(const TileAddress& tile, double margin);

}  // namespace loopwright::page
