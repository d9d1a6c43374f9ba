// The line of road between two points, for a note on a part of a street.
#pragma once

#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::command {

/// The shortest way along roads that a learner may drive, in either direction, between the places
/// nearest to the two points. Throws UsageError when one is off the roads, or none joins them within
/// a few kilometres.
std::vector<Point> road_between(const road::Roads& roads, Point from, Point to);

}  // namespace loopwright::command
