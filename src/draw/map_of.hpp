// What the parts of a map are drawn from.
#pragma once

#include <string>

#include "draw/map_way.hpp"

namespace loopwright::draw {

struct MapOf {
  const road::Roads& roads;
  const wish::Loop& loop;
  const MapFrame& frame;
  const Way& way;
  const say::Words& words;
  std::string start;  ///< words beside the bar at the first corner
};

}  // namespace loopwright::draw
