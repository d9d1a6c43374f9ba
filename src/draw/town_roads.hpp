// The roads around a loop, pale.
#pragma once

#include <vector>

#include "draw/rings.hpp"
#include "loopwright/draw/overview.hpp"

namespace loopwright::draw {

/// A road of the map, on paper.
struct TownRoad {
  PieceId piece;
  Line line;  ///< as mapped, not cut at the map's edge
};

/// The roads that touch the map, ascending; drives and car-park aisles are left out.
std::vector<TownRoad> roads_of(const road::Roads& roads, const MapFrame& frame);

void draw_roads(Picture& map, const road::Roads& roads, const std::vector<TownRoad>& town,
                const MapFrame& frame, const std::vector<Ring>& rings);

}  // namespace loopwright::draw
