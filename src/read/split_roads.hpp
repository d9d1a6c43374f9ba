// Cuts roads into pieces at every point that matters and numbers those points.
#pragma once

#include <vector>

#include "loopwright/mark/draft.hpp"
#include "loopwright/read/outline.hpp"
#include "select_roads.hpp"

namespace loopwright::read {

/// Fills nodes, pieces, stretches, shape and timed_rules of the draft. Returns, for each node,
/// whether a road was cut off there because the extract doesn't hold its next point, or lies beyond the outline, where
/// nothing is known whole. What has a point beyond it isn't driven. outline: none: all of the extract counts.
std::vector<bool> split_roads(mark::Draft& draft, const std::vector<Road>& roads,
                              const Outline* outline);

}  // namespace loopwright::read
