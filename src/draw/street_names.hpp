// Names along the roads: first those the loop drives, then the important others.
#pragma once

#include <vector>

#include "draw/map_of.hpp"
#include "draw/taken.hpp"
#include "draw/town_roads.hpp"

namespace loopwright::draw {

void draw_names(Picture& page, const MapOf& map, const std::vector<TownRoad>& town, Taken& taken);

}  // namespace loopwright::draw
