// Lines of a map on paper: with more points, cut at the edge of a page.
#pragma once

#include <vector>

#include "draw/lines.hpp"

namespace loopwright::draw {

/// True when two spots are less than `radius` apart. Why not length_of: a map asks it a million times.
inline bool near(Spot a, Spot b, double radius) {
  const double x = a.x - b.x, y = a.y - b.y;
  return x * x + y * y < radius * radius;
}
double distance_to(const Line& line, Spot spot);
/// Adds points so that none is further than `step` from the next.
Line with_steps(const Line& line, double step);
/// The parts of a line inside a box.
std::vector<Line> clipped(const Line& line, const Box& box);
/// Adds the parts of a line outside a circle to `parts`.
void cut_circle(const Line& line, Spot middle, double radius, std::vector<Line>& parts);
bool holds(const Box& box, Spot spot);

}  // namespace loopwright::draw
