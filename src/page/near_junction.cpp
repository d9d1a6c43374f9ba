#include "page/near_junction.hpp"

#include <algorithm>

namespace loopwright::page {
namespace {

constexpr double reach_m = 40;
constexpr std::ptrdiff_t least_roads = 3;

bool is_junction(const road::Roads& roads, NodeId node) {
  const auto away = roads.leaving(node);
  return std::ranges::count_if(away, [&](StretchId stretch) {
           return (roads.piece(stretch).flags & road::piece_flag::minor_service) == 0;
         }) >= least_roads;
}

}  // namespace

std::optional<Point> junction_near(const road::Roads& roads, Point at) {
  std::optional<Point> nearest;
  double nearest_m = reach_m;
  for (const PieceId piece : road::pieces_near(roads, at, reach_m))
    for (const NodeId node : {roads.pieces[piece.index()].a, roads.pieces[piece.index()].b}) {
      const Point there = roads.nodes[node.index()].at;
      const double off_m = distance_m(at, there);
      if (off_m > nearest_m || !is_junction(roads, node)) continue;
      nearest = there;
      nearest_m = off_m;
    }
  return nearest;
}

}  // namespace loopwright::page
