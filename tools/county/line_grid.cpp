// Squares are numbered east and north from the origin; a segment is entered in every square that its
// bounding box touches, cut into pieces no longer than a square first, so that a long slanting
// segment doesn't fill a large box.
#include "county/line_grid.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::county {
namespace {

constexpr double square_m = 100;

long square_of(double metres) {
  return static_cast<long>(std::floor(metres / square_m));
}

/// Calls visit(square) for every square within reach of a segment, some more than once.
template <typename Visit>
void squares_of(Spot a, Spot b, double reach_m, const Visit& visit) {
  const int pieces = 1 + static_cast<int>(apart(a, b) / square_m);
  for (int i = 0; i < pieces; ++i) {
    const auto part = [&](double from, double to, int at) {
      return from + (to - from) * at / pieces;
    };
    const double x0 = part(a.x(), b.x(), i);
    const double x1 = part(a.x(), b.x(), i + 1);
    const double y0 = part(a.y(), b.y(), i);
    const double y1 = part(a.y(), b.y(), i + 1);
    for (long x = square_of(std::min(x0, x1) - reach_m); x <= square_of(std::max(x0, x1) + reach_m);
         ++x)
      for (long y = square_of(std::min(y0, y1) - reach_m);
           y <= square_of(std::max(y0, y1) + reach_m); ++y)
        visit(Spot{x, y});
  }
}

std::vector<std::size_t> once(std::vector<std::size_t> lines) {
  std::ranges::sort(lines);
  const auto rest = std::ranges::unique(lines);
  lines.erase(rest.begin(), rest.end());
  return lines;
}

}  // namespace

void LineGrid::put(std::size_t line, std::span<const Spot> points) {
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    squares_of(points[i], points[i + 1], 0, [&](Spot square) {
      std::vector<std::size_t>& known = squares_[square];
      if (known.empty() || known.back() != line) known.push_back(line);
    });
}

std::vector<std::size_t> LineGrid::near(Spot place, double reach_m) const {
  return near(std::span(&place, 1), reach_m);
}

std::vector<std::size_t> LineGrid::near(std::span<const Spot> points, double reach_m) const {
  std::vector<std::size_t> found;
  const auto visit = [&](Spot square) {
    if (const auto known = squares_.find(square); known != squares_.end())
      found.insert(found.end(), known->second.begin(), known->second.end());
  };
  if (points.size() == 1) squares_of(points[0], points[0], reach_m, visit);
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    squares_of(points[i], points[i + 1], reach_m, visit);
  return once(std::move(found));
}

}  // namespace loopwright::county
