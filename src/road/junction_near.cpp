#include "loopwright/road/junction_near.hpp"

#include <algorithm>

namespace loopwright::road {
namespace {

bool is_junction(const Roads& roads, NodeId node) {
  constexpr std::ptrdiff_t least_roads = 3;
  return std::ranges::count_if(roads.leaving(node), [&](StretchId away) {
           return (roads.piece(away).flags & piece_flag::minor_service) == 0;
         }) >= least_roads;
}

}  // namespace

std::optional<Point> junction_near(const Roads& roads, Point at, double within_m) {
  std::optional<Point> nearest;
  double nearest_m = within_m;
  for (const PieceId piece : pieces_near(roads, at, within_m))
    for (const NodeId node : {roads.pieces[piece.index()].a, roads.pieces[piece.index()].b}) {
      const Point there = roads.nodes[node.index()].at;
      const double off_m = distance_m(at, there);
      if (off_m > nearest_m || !is_junction(roads, node)) continue;
      nearest = there, nearest_m = off_m;
    }
  return nearest;
}

}  // namespace loopwright::road
