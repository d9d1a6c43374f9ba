// Method: the hull by turns over the sorted spots (Andrew, Information Processing Letters 9(5), 1979); a
// line of the hatching goes from where it meets the edge first to where it meets it last.
#include "draw/hatching.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::draw {
namespace {

double cross(Spot a, Spot b) {
  return a.x * b.y - a.y * b.x;
}

double dot(Spot a, Spot b) {
  return a.x * b.x + a.y * b.y;
}

/// The half of the hull that sorted spots make in this order.
Line half_hull(const Line& spots) {
  Line half;
  for (const Spot spot : spots) {
    while (half.size() >= 2 &&
           cross(half.back() - half[half.size() - 2], spot - half.back()) <= 1e-9)
      half.pop_back();
    half.push_back(spot);
  }
  half.pop_back();
  return half;
}

}  // namespace

Line hull_of(Line spots) {
  if (spots.size() < 3) return spots;
  std::sort(spots.begin(), spots.end(),
            [](Spot a, Spot b) { return std::pair(a.x, a.y) < std::pair(b.x, b.y); });
  Line hull = half_hull(spots);
  append(hull, half_hull(reversed(spots)));
  return hull;
}

std::vector<Line> hatching(const Line& corners, double course_deg, double apart) {
  const Spot course = towards_deg(course_deg), across = left_of(course);
  double least = 1e9, most = -1e9;
  for (const Spot corner : corners) {
    least = std::min(least, dot(corner, across));
    most = std::max(most, dot(corner, across));
  }
  std::vector<Line> lines;
  for (double at = least + apart / 2; at < most; at += apart) {
    Line met;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Spot a = corners[i], b = corners[(i + 1) % corners.size()];
      const double from = dot(a, across) - at, to = dot(b, across) - at;
      if ((from < 0) != (to < 0)) met.push_back(a + (from / (from - to)) * (b - a));
    }
    if (met.size() == 2) lines.push_back(std::move(met));
  }
  return lines;
}

}  // namespace loopwright::draw
