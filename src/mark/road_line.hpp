// The line of a piece of road, lengthened at both ends by the road straight on.
//
//   const RoadLine line = road_line(draft, roads, piece, {150, road::piece_flag::bridge});
//
// Rules: private to mark. Straight on is the straightest of the other stretches at a node, within
// 45 degrees; where there is none, the line ends.
// Why: a rule about shape that looked at single pieces would depend on where mappers cut a road.
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/base/point_between.hpp"
#include "loopwright/mark/draft.hpp"

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
/// roads are the draft's.
RoadLine road_line(const Draft& draft, const road::Roads& roads, PieceId piece, Lengthening how);

/// Calls f(metres along, point) at both ends of a line and at equal steps of at most `step_m`.
template <class F>
void walk_evenly(std::span<const Point> line, double step_m, F&& f) {
  std::vector<double> legs_m;
  double whole_m = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    legs_m.push_back(distance_m(line[i - 1], line[i]));
    whole_m += legs_m.back();
  }
  const double steps = whole_m > step_m ? whole_m / step_m : 1;
  const double step = whole_m / static_cast<double>(static_cast<std::int64_t>(steps + 0.999));
  double leg_start = 0, next = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double leg_m = legs_m[i - 1];
    for (; next <= leg_start + leg_m && step > 0; next += step) {
      const double along_m = next - leg_start;
      f(next, along_m <= 0      ? line[i - 1]
              : along_m < leg_m ? point_between(line[i - 1], line[i], along_m / leg_m)
                                : line[i]);
    }
    leg_start += leg_m;
  }
}

}  // namespace loopwright::mark
