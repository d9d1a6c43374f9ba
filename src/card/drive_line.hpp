// The road a loop drives, for exchange files.
#pragma once

#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::card {

/// From the corner nearest to the door to the corner before it again, each point once in a row. One
/// point when both are the same. Why: a file must not lead to a pupil's door (DEVELOPERS.md).
std::vector<Point> drive_line(const road::Roads& roads, const wish::Loop& loop);

/// The same of the rows [first, end). Rules: none of them holds the door.
std::vector<Point> line_along(const road::Roads& roads, const wish::Loop& loop, std::size_t first,
                              std::size_t end);

/// Where a pass begins, never nearer to the door than the corner.
Point pass_point(const road::Roads& roads, const wish::Loop& loop, const wish::Pass& pass);

}  // namespace loopwright::card
