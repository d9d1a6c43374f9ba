// The line of a piece of road, lengthened at both ends by the road straight on.
//
//   const RoadLine line = road_line(roads, piece, {150, road::piece_flag::bridge});
//
// Rules: private to mark. Straight on is the straightest of the other stretches at a node, within
// 45 degrees; where there is none, the line ends.
// Why: a rule about shape that looked at single pieces would depend on where mappers cut a road.
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

struct RoadLine {
  std::vector<Point> points;
  double before_m = 0;  ///< along it to where the piece starts
  double piece_m = 0;   ///< length of the piece
};

struct Lengthening {
  double by_m = 0;             ///< at each end
  std::uint32_t not_over = 0;  ///< piece flags of roads it must not go on by
};
RoadLine road_line(const road::Roads& roads, PieceId piece, Lengthening how);

/// Calls f(metres along, point) at both ends of a line and at equal steps of at most `step_m`.
template <class F>
void walk_evenly(std::span<const Point> line, double step_m, F&& f) {
  const double whole_m = length_m(line);
  const double steps = whole_m > step_m ? whole_m / step_m : 1;
  const double step = whole_m / static_cast<double>(static_cast<std::int64_t>(steps + 0.999));
  double leg_start = 0, next = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const std::span<const Point> leg = line.subspan(i - 1, 2);
    const double leg_m = distance_m(leg[0], leg[1]);
    for (; next <= leg_start + leg_m && step > 0; next += step) {
      f(next, point_along(leg, next - leg_start));
    }
    leg_start += leg_m;
  }
}

}  // namespace loopwright::mark
