// An area as vector tiles, for a map on the screen.
//
//   Tiles tiles(area.roads());   tiles.tile({15, 16620, 10404}, {start, end}, setting);   // bytes of the tile
//
// Layers, each from the zoom at which it can be read:
//   roads      every piece of road: what it is, its name, width, whether a learner may drive it
//   practice   runs of road to practise on, a line for each kind
//   places     junctions and crossings to practise at, a point for each
//   bus_lanes  with the verdict that holds all through the interval asked for (lanes/lane_verdicts.hpp)
//   pull_ups   where the map forbids no stop at the near kerb
//   names      towns, villages and their quarters
// Of roads with notes on them (mark/noted.hpp) it tells what these change: "shut", "noted_limit" and "noted_humps" of a
// road, "noted" of a place; a place that a note takes all practice away from isn't there.
// Rules: cheap to make, reads all places and named spots of the area once; then any thread may ask.
// Why tiles: a county's roads are too many for one drawing; a tile is cut from the area's own grid in milliseconds.
// Source: Vector Tile Specification 2.1; the table of layers and their values: DEVELOPERS.md, MAP ON THE SCREEN.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::page {

/// A square of the map (EPSG:3857), counted from the north-west corner of the earth.
struct TileAddress {
  int zoom = 0;
  std::uint32_t column = 0, row = 0;
  friend auto operator<=>(const TileAddress&, const TileAddress&) = default;
};
/// Zooms at which there are tiles; a screen enlarges those of the last one.
inline constexpr int least_zoom = 9, most_zoom = 16;
/// True when there is such a tile: a zoom there is, column and row below 2^zoom.
bool is_tile(const TileAddress& tile);
/// The place in its middle.
Point middle_of(const TileAddress& tile);

class Tiles {
 public:
  /// Rules: the area must outlive it.
  explicit Tiles(const road::Roads& roads) : Tiles(roads, roads) {}
  /// roads: as notes make them; map: the same without. Rules: both must outlive it.
  Tiles(const road::Roads& roads, const road::Roads& map);
  /// Empty bytes for a tile without anything. Rules: is_tile(tile).
  [[nodiscard]] std::string tile(const TileAddress& tile, const lanes::Passing& when,
                                 const hours::Setting& setting) const;

 private:
  const road::Roads& roads_;
  const road::Roads& map_;
  std::vector<std::pair<std::uint64_t, PlaceId>> places_;  // by cell of the grid
  std::vector<std::pair<std::uint64_t, std::size_t>>
      spots_;  // settlements, rows of named_spots, by cell
};

}  // namespace loopwright::page
