// The layers of a tile that are lines along roads: roads, practice, bus_lanes and pull_ups.
#pragma once

#include <span>

#include "loopwright/hours/setting.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/page/tiles.hpp"
#include "loopwright/road/roads.hpp"
#include "page/tile_writer.hpp"

namespace loopwright::page {

struct RoadsShown {
  const TileAddress& tile;
  const road::Roads& roads;
  const road::Roads& map;      ///< the same without notes
  const lanes::Passing& when;  ///< of bus lanes
  const hours::Setting& setting;
};

/// Adds those of the layers that this zoom shows.
void add_roads(TileWriter& out, const RoadsShown& shown, std::span<const PieceId> pieces);

}  // namespace loopwright::page
