#include "road_line.hpp"

#include <algorithm>
#include <cmath>

#include "approach.hpp"

namespace loopwright::mark {
namespace {

constexpr double straight_within_deg = 45;

/// The stretch by which the road goes straight on after this one; none when it doesn't.
StretchId straight_on(const Draft& draft, const road::Roads& roads, StretchId stretch,
                      std::uint32_t not_over) {
  const double heading = draft.bearing_in_deg(stretch);
  StretchId best;
  double least_turn = straight_within_deg;
  for (const StretchId next : roads.leaving(roads.to_node(stretch))) {
    if (next.piece() == stretch.piece() || (roads.piece(next).flags & not_over) != 0 ||
        gets_nowhere(roads, stretch, next))
      continue;
    const double turn = std::abs(heading_change_deg(heading, draft.bearing_out_deg(next)));
    if (turn > least_turn) continue;
    best = next, least_turn = turn;
  }
  return best;
}

/// Up to so many metres of the road beyond a stretch's end, without that end.
std::vector<Point> road_beyond(const Draft& draft, const road::Roads& roads, StretchId stretch,
                               Lengthening how) {
  std::vector<Point> beyond;
  double length = 0;
  Point last = roads.nodes[roads.to_node(stretch).index()].at;
  for (StretchId at = straight_on(draft, roads, stretch, how.not_over);
       at.known() && length < how.by_m; at = straight_on(draft, roads, at, how.not_over)) {
    const auto shape = roads.shape_of(at.piece());
    for (std::size_t i = 0; i < shape.size(); ++i) {
      const Point point = at.against() ? shape[shape.size() - 1 - i] : shape[i];
      if (point == last) continue;  // the first, where the last stretch ended
      const double step = distance_m(last, point);
      if (length + step > how.by_m) {
        beyond.push_back(point_between(last, point, (how.by_m - length) / step));
        return beyond;
      }
      beyond.push_back(point);
      length += step;
      last = point;
    }
  }
  return beyond;
}

}  // namespace

RoadLine road_line(const Draft& draft, const road::Roads& roads, PieceId piece, Lengthening how) {
  RoadLine line;
  line.points = road_beyond(draft, roads, {piece, true}, how);
  std::ranges::reverse(line.points);
  const auto shape = roads.shape_of(piece);
  line.points.push_back(shape.front());
  line.before_m = length_m(line.points);
  line.points.insert(line.points.end(), shape.begin() + 1, shape.end());
  line.piece_m = roads.pieces[piece.index()].length_m;
  const std::vector<Point> after = road_beyond(draft, roads, {piece, false}, how);
  line.points.insert(line.points.end(), after.begin(), after.end());
  return line;
}

}  // namespace loopwright::mark
