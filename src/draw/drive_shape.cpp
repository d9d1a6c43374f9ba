#include "draw/drive_shape.hpp"

#include <algorithm>

namespace loopwright::draw {

std::vector<DriveShape> drive_shapes(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<DriveShape> shapes;
  for (std::size_t i = 1; i + 1 < loop.stretches.size(); ++i) {
    const StretchId stretch = loop.stretches[i].stretch;
    const auto shape = roads.shape_of(stretch.piece());
    shapes.push_back({i, {shape.begin(), shape.end()}});
    auto& points = shapes.back().points;
    if (stretch.against()) std::reverse(points.begin(), points.end());
  }
  if (shapes.empty())
    shapes.push_back({0, {roads.nodes[roads.to_node(loop.stretches.front().stretch).index()].at}});
  return shapes;
}

}  // namespace loopwright::draw
