#include "draw/lines.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopwright::draw {
namespace {

constexpr double per_degree = std::numbers::pi / 180;

double dot(Spot a, Spot b) {
  return a.x * b.x + a.y * b.y;
}

/// Where a corner of a shifted line lies: on the bisector of the normals of both legs.
Spot mitre(Spot before, Spot after, double to_left) {
  constexpr double most = 3;
  const Spot normal = unit(left_of(before) + left_of(after));
  const double shrink = std::max(dot(normal, left_of(after)), 1 / most);
  return (to_left / shrink) * normal;
}

struct Part {
  std::size_t first = 0, last = 0;
};

/// Douglas and Peucker 1973: keep the spot farthest off the chord, and look again on both sides.
void mark_corners(const Line& line, Part part, double off, std::vector<bool>& keep) {
  const Spot from = line[part.first], leg = line[part.last] - from;
  const double square = std::max(dot(leg, leg), 1e-18);
  std::size_t farthest = part.first;
  double most = off;
  for (std::size_t i = part.first + 1; i < part.last; ++i) {
    const Spot to = line[i] - from;
    // Off the chord itself: what leads beyond its end and back is no straight line.
    const double away = length_of(to - std::clamp(dot(to, leg) / square, 0.0, 1.0) * leg);
    if (away > most) farthest = i, most = away;
  }
  if (farthest == part.first) return;
  keep[farthest] = true;
  mark_corners(line, {part.first, farthest}, off, keep);
  mark_corners(line, {farthest, part.last}, off, keep);
}

}  // namespace

Spot unit(Spot a) {
  const double length = length_of(a);
  return length > 1e-9 ? Spot{a.x / length, a.y / length} : Spot{0, -1};
}

Spot left_of(Spot direction) {
  return unit({direction.y, -direction.x});
}

Spot towards_deg(double clockwise_from_up) {
  const double angle = clockwise_from_up * per_degree;
  return {std::sin(angle), -std::cos(angle)};
}

double angle_deg(Spot direction) {
  const double degrees = std::atan2(direction.x, -direction.y) / per_degree;
  return degrees < 0 ? degrees + 360 : degrees;
}

double length_of(const Line& line) {
  double length = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) length += length_of(line[i + 1] - line[i]);
  return length;
}

Spot along(const Line& line, double length) {
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double leg = length_of(line[i + 1] - line[i]);
    if (length <= leg && leg > 0)
      return line[i] + (std::max(length, 0.0) / leg) * (line[i + 1] - line[i]);
    length -= leg;
  }
  return line.back();
}

Spot direction_at(const Line& line, double length) {
  Spot last{0, -1};
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Spot leg = line[i + 1] - line[i];
    if (length_of(leg) <= 0) continue;
    last = unit(leg);
    length -= length_of(leg);
    if (length < 0) break;
  }
  return last;
}

std::vector<Step> steps_along(const Line& line, double step) {
  std::vector<Step> steps;
  Spot towards{0, -1};
  double at = 0, begin = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Spot leg = line[i + 1] - line[i];
    const double length = length_of(leg);
    if (length <= 0) continue;
    towards = unit(leg);
    for (; at < begin + length; at += step)
      steps.push_back({line[i] + ((at - begin) / length) * leg, towards});
    begin += length;
  }
  steps.push_back({line.back(), towards});
  return steps;
}

Line part_of(const Line& line, double from, double to) {
  Line part{along(line, from)};
  double at = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    at += length_of(line[i + 1] - line[i]);
    if (at > from && at < to) part.push_back(line[i + 1]);
  }
  part.push_back(along(line, to));
  return part;
}

Line reversed(Line line) {
  std::reverse(line.begin(), line.end());
  return line;
}

Line shifted(const Line& line, double to_left) {
  Line legs;
  Line kept{line.front()};
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Spot leg = line[i + 1] - kept.back();
    if (length_of(leg) < 1e-6) continue;
    legs.push_back(unit(leg)), kept.push_back(line[i + 1]);
  }
  if (legs.empty()) return line;
  Line moved;
  for (std::size_t i = 0; i < kept.size(); ++i)
    moved.push_back(kept[i] +
                    mitre(legs[i == 0 ? 0 : i - 1], legs[std::min(i, legs.size() - 1)], to_left));
  return moved;
}

Line scaled(Line line, double factor, Spot by) {
  for (Spot& spot : line) spot = by + factor * spot;
  return line;
}

Line simplified(const Line& line, double off) {
  if (line.size() < 3) return line;
  std::vector<bool> keep(line.size(), false);
  keep.front() = keep.back() = true;
  mark_corners(line, {0, line.size() - 1}, off, keep);
  Line kept;
  for (std::size_t i = 0; i < line.size(); ++i)
    if (keep[i]) kept.push_back(line[i]);
  return kept;
}

Line curve(Spot a, Spot from, Spot b, Spot into) {
  constexpr int steps = 12;
  // A quarter of a circle is nearly a cubic whose handles are 0.55 of the legs, 0.39 of the chord.
  const double handle = 0.39 * length_of(b - a);
  const Spot c = a + handle * unit(from), d = b - handle * unit(into);
  Line spots;
  for (int i = 1; i < steps; ++i) {
    const double t = i / double{steps}, s = 1 - t;
    spots.push_back(s * s * s * a + 3 * s * s * t * c + 3 * s * t * t * d + t * t * t * b);
  }
  return spots;
}

Line rounded(const Line& line, double radius) {
  Line smooth{line.front()};
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const Spot in = line[i] - line[i - 1], out = line[i + 1] - line[i];
    const double cut = std::min({radius, length_of(in) / 2, length_of(out) / 2});
    const Spot before = line[i] - cut * unit(in), after = line[i] + cut * unit(out);
    smooth.push_back(before);
    append(smooth, curve(before, in, after, out));
    smooth.push_back(after);
  }
  smooth.push_back(line.back());
  return smooth;
}

Line arc(Spot middle, double radius, double from_deg, double turn_deg) {
  const int steps = std::max(2, static_cast<int>(std::ceil(std::abs(turn_deg) / 6)));
  Line spots;
  for (int i = 0; i <= steps; ++i)
    spots.push_back(middle + radius * towards_deg(from_deg + turn_deg * i / steps));
  return spots;
}

Line up_to_circle(const Line& line, Spot middle, double radius) {
  Line inside{line.front()};
  for (std::size_t i = 1; i < line.size(); ++i) {
    if (length_of(line[i] - middle) <= radius) {
      inside.push_back(line[i]);
      continue;
    }
    const Spot from = inside.back() - middle, leg = line[i] - inside.back();
    const double a = dot(leg, leg), b = dot(from, leg), c = dot(from, from) - radius * radius;
    const double root = b * b - a * c;
    if (a > 0 && root >= 0) inside.push_back(inside.back() + ((std::sqrt(root) - b) / a) * leg);
    break;
  }
  if (inside.size() < 2) inside.push_back(inside.front());
  return inside;
}

void append(Line& line, const Line& more) {
  line.insert(line.end(), more.begin(), more.end());
}

}  // namespace loopwright::draw
