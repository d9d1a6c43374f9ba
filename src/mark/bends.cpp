// Method: points nearer than 10 m to the last one kept are skipped (they only show how carefully a
// kerb was drawn); the changes of heading at the others are summed, left and right alike, and
// divided by the length.
// The measure is the "bendiness" of road appraisal (COBA manual, speeds on rural roads; from
// memory: its speed relation is given up to 150 degrees per km). From 150 on a road counts as
// winding: ours. A line under 150 m says more about one junction than about a road: not judged.
#include "bends.hpp"

#include <cmath>
#include <vector>

namespace loopwright::mark {
namespace {

constexpr double step_m = 10, least_length_m = 150, winding_from_deg_per_km = 150;

std::vector<Point> thinned(std::span<const Point> line) {
  std::vector<Point> kept{line.front()};
  for (const Point point : line.subspan(1)) {
    if (distance_m(kept.back(), point) >= step_m) kept.push_back(point);
  }
  return kept;
}

}  // namespace

double bendiness_deg_per_km(std::span<const Point> line) {
  const double length = length_m(line);
  if (length < least_length_m) return 0;
  const std::vector<Point> points = thinned(line);
  double turned = 0;
  for (std::size_t i = 2; i < points.size(); ++i) {
    turned += std::abs(heading_change_deg(bearing_deg(points[i - 2], points[i - 1]),
                                          bearing_deg(points[i - 1], points[i])));
  }
  return turned / (length / 1000);
}

bool is_winding(std::span<const Point> line) {
  return bendiness_deg_per_km(line) >= winding_from_deg_per_km;
}

}  // namespace loopwright::mark
