// Rings of roundabouts, put together from the ways they are mapped as.
#pragma once

#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

struct Ring {
  std::vector<StretchId> stretches;  ///< in driving order, from the node with the least id
  std::vector<Point> shape;          ///< in driving order, closed
  std::int64_t least_way = 0;
  Point middle;
  double diameter_m = 0;
  bool is_clockwise = false;

  [[nodiscard]] bool holds(Point point) const;  ///< true inside the ring
};

/// All closed rings, by their least way. What is tagged as a ring and isn't one is reported.
std::vector<Ring> find_rings(Draft& draft, const road::Roads& roads);

}  // namespace loopwright::mark
