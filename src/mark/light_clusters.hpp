// Traffic lights that work together, and pedestrian crossings that belong to them.
#pragma once

#include <vector>

#include "passing.hpp"

namespace loopwright::mark {

struct LightCluster {
  Spot spot;
  std::vector<NodeId> lights;  ///< for vehicles or pedestrians, ordered
  bool has_junction = false;   ///< false: one crossing, or lights on a road without a junction
  bool has_crossing = false;
};

/// All lights but those of roundabouts and of level crossings, which belong to them.
std::vector<LightCluster> find_light_clusters(Draft& draft, const road::Roads& roads);

}  // namespace loopwright::mark
