// Lines of a map on paper: with more points, cut at the edge of a page.
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "draw/lines.hpp"

namespace loopwright::draw {

/// True when two spots are less than `radius` apart. Why not length_of: a map asks it a million times.
inline bool near(Spot a, Spot b, double radius) {
  const double x = a.x - b.x, y = a.y - b.y;
  return x * x + y * y < radius * radius;
}
double distance_to(const Line& line, Spot spot);
/// False when every part of a line lies further than `reach` to one side of a spot; quicker to ask than
/// distance_to.
bool passes_near(const Line& line, Spot spot, double reach);
/// Adds points so that none is further than `step` from the next.
Line with_steps(const Line& line, double step);
/// So many parts of the same length; none of a line without length.
std::vector<Line> cut_evenly(const Line& line, std::size_t parts);
/// The same lines with as many as can be joined end to end, turned round where need be, into one. Rules:
/// ends meet when they are the very same spot; where more than two do, any two are joined.
std::vector<Line> joined(std::vector<Line> lines);
/// The parts of a line inside a box.
std::vector<Line> clipped(const Line& line, const Box& box);
/// Adds the parts of a line outside a circle to `parts`.
void cut_circle(const Line& line, Spot middle, double radius, std::vector<Line>& parts);
bool holds(const Box& box, Spot spot);
/// The box without so much on each side.
Box within(const Box& box, double margin);

/// Calls f(i, j), i < j, for every two points of a line less than `reach` apart.
template <class F>
void for_near_pairs(const Line& line, double reach, F&& f) {
  std::vector<std::size_t> order(line.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::pair(line[a].x, a) < std::pair(line[b].x, b);
  });
  for (std::size_t a = 0; a < order.size(); ++a)
    for (std::size_t b = a + 1; b < order.size(); ++b) {
      if (line[order[b]].x - line[order[a]].x >= reach) break;
      if (near(line[order[a]], line[order[b]], reach))
        f(std::min(order[a], order[b]), std::max(order[a], order[b]));
    }
}

}  // namespace loopwright::draw
