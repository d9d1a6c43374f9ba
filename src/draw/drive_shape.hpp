// The shapes that a loop drives, but those of the door.
#pragma once

#include <cstddef>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::draw {

struct DriveShape {
  std::size_t stretch = 0;    ///< index into the loop's stretches
  std::vector<Point> points;  ///< as driven
};

/// From the corner next to the door to the corner before it. Of a loop that has no more than the
/// door's stretches: the one corner. Why: no sheet may lead to a pupil's door (DEVELOPERS.md).
std::vector<DriveShape> drive_shapes(const road::Roads& roads, const wish::Loop& loop);

}  // namespace loopwright::draw
