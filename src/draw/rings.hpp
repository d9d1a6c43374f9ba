// Roundabouts as a map shows them: as they lie while that can be seen, else as a ring just large
// enough to be one.
#pragma once

#include <vector>

#include "draw/lines.hpp"
#include "loopwright/draw/overview.hpp"

namespace loopwright::draw {

/// A roundabout drawn larger than it is.
struct Ring {
  Spot middle;
  double radius = 0;       ///< of the middle of its road, on paper
  double true_radius = 0;  ///< as it lies; what comes no nearer only passes by
  bool mini = false;
  std::vector<NodeId> nodes = {};  ///< of the map, on it
};

/// Those of the map that are too small to be seen as they lie. Roads and ways end at them.
std::vector<Ring> small_rings(const road::Roads& roads, const MapFrame& frame);

/// The parts of a line outside all rings.
std::vector<Line> outside(const Line& line, const std::vector<Ring>& rings);

}  // namespace loopwright::draw
