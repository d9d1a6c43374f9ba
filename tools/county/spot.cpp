// Geometry on a county's plan.
//
// 1. A curve is Catmull and Rom's (1974) with tension 1/2: it goes through every point that is given,
//    so a plan says where a road lies and not how it is steered there.
// 2. What is worked out is rounded to a centimetre at the end only.
#include "county/spot.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <set>

namespace loopwright::county {
namespace {

constexpr double step_m = 25;  // of a curve, ours
constexpr double straight_m =
    0.7;  // a point of a curve less off the straight than this says nothing

/// Nearest place on a segment, not rounded.
std::array<double, 2> foot_of(Spot a, Spot b, Spot p) {
  const double dx = b.x() - a.x();
  const double dy = b.y() - a.y();
  const double square = dx * dx + dy * dy;
  double share = square == 0 ? 0 : ((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / square;
  share = std::clamp(share, 0.0, 1.0);
  return {a.x() + dx * share, a.y() + dy * share};
}

double off_segment(Spot a, Spot b, Spot p) {
  const auto [x, y] = foot_of(a, b, p);
  return std::hypot(x - p.x(), y - p.y());
}

Spot on_curve(const std::array<Spot, 4>& p, double t) {
  const double t2 = t * t;
  const double t3 = t2 * t;
  const std::array<double, 4> weights{-t + 2 * t2 - t3, 2 - 5 * t2 + 3 * t3, t + 4 * t2 - 3 * t3,
                                      -t2 + t3};
  double x = 0;
  double y = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    x += weights[i] * p[i].x();
    y += weights[i] * p[i].y();
  }
  return spot(x / 2, y / 2);
}

std::vector<Spot> thinned(std::span<const Spot> curve, std::span<const Spot> given) {
  const std::set<Spot> keep(given.begin(), given.end());
  std::vector<Spot> out{curve.front()};
  for (std::size_t i = 1; i + 1 < curve.size(); ++i)
    if (keep.contains(curve[i]) || off_segment(out.back(), curve[i + 1], curve[i]) > straight_m)
      out.push_back(curve[i]);
  out.push_back(curve.back());
  return out;
}

}  // namespace

Spot spot(double x_m, double y_m) {
  return {std::lround(x_m * 100), std::lround(y_m * 100)};
}

double apart(Spot a, Spot b) {
  return std::hypot(a.x() - b.x(), a.y() - b.y());
}

Spot towards(Spot a, Spot b, double metres) {
  const double share = metres / apart(a, b);
  return spot(a.x() + (b.x() - a.x()) * share, a.y() + (b.y() - a.y()) * share);
}

Spot on_circle(Spot centre, double radius_m, double angle) {
  return spot(centre.x() + radius_m * std::cos(angle), centre.y() + radius_m * std::sin(angle));
}

double angle_of(Spot from, Spot to) {
  return std::atan2(to.y() - from.y(), to.x() - from.x());
}

double turn_at(Spot a, Spot b, Spot c) {
  const double turn = std::remainder(angle_of(b, c) - angle_of(a, b), 2 * std::numbers::pi);
  return turn <= -std::numbers::pi ? std::numbers::pi : turn;
}

std::optional<Spot> meeting(Spot a, Spot b, Spot c, Spot d) {
  const double rx = b.x() - a.x();
  const double ry = b.y() - a.y();
  const double sx = d.x() - c.x();
  const double sy = d.y() - c.y();
  const double cross = rx * sy - ry * sx;
  if (cross == 0) return std::nullopt;
  const double t = ((c.x() - a.x()) * sy - (c.y() - a.y()) * sx) / cross;
  const double u = ((c.x() - a.x()) * ry - (c.y() - a.y()) * rx) / cross;
  if (t < 0 || t > 1 || u < 0 || u > 1) return std::nullopt;
  return spot(a.x() + rx * t, a.y() + ry * t);
}

std::vector<Spot> bend(std::span<const Spot> through) {
  if (through.size() < 3) return {through.begin(), through.end()};
  std::vector<Spot> curve{through.front()};
  for (std::size_t i = 0; i + 1 < through.size(); ++i) {
    const std::array<Spot, 4> four{through[i == 0 ? 0 : i - 1], through[i], through[i + 1],
                                   through[std::min(i + 2, through.size() - 1)]};
    const double steps = std::max(1.0, std::nearbyint(apart(four[1], four[2]) / step_m));
    for (double step = 1; step < steps; ++step) curve.push_back(on_curve(four, step / steps));
    curve.push_back(four[2]);
  }
  return thinned(curve, through);
}

std::vector<Spot> beside(std::span<const Spot> line, double metres) {
  std::vector<Spot> out;
  out.reserve(line.size());
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Spot a = line[i == 0 ? 0 : i - 1];
    const Spot b = line[std::min(i + 1, line.size() - 1)];
    const double share = a == b ? 0 : metres / apart(a, b);
    out.push_back(
        spot(line[i].x() - (b.y() - a.y()) * share, line[i].y() + (b.x() - a.x()) * share));
  }
  return out;
}

double length_m(std::span<const Spot> line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += apart(line[i - 1], line[i]);
  return sum;
}

Spot along(std::span<const Spot> line, double metres, double left_m) {
  metres = std::max(metres, 0.0);
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Spot a = line[i - 1];
    const Spot b = line[i];
    const double size = apart(a, b);
    if (size > 0 && (metres <= size || i + 1 == line.size())) {
      const double on = std::min(metres, size);
      const double dx = (b.x() - a.x()) / size;
      const double dy = (b.y() - a.y()) / size;
      return spot(a.x() + dx * on - dy * left_m, a.y() + dy * on + dx * left_m);
    }
    metres -= size;
  }
  return line.back();
}

Foot nearest(std::span<const Spot> line, Spot from) {
  Foot best{.off_m = apart(line.front(), from), .segment = 0, .at = line.front()};
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const auto [x, y] = foot_of(line[i], line[i + 1], from);
    const double off = std::hypot(x - from.x(), y - from.y());
    if (i == 0 || off < best.off_m) best = {.off_m = off, .segment = i, .at = spot(x, y)};
  }
  return best;
}

bool inside(std::span<const Spot> polygon, Spot place) {
  bool in = false;
  for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
    const Spot a = polygon[i];
    const Spot b = polygon[j];
    if ((a.y_cm > place.y_cm) == (b.y_cm > place.y_cm)) continue;
    const double x = a.x() + (place.y() - a.y()) / (b.y() - a.y()) * (b.x() - a.x());
    if (place.x() < x) in = !in;
  }
  return in;
}

}  // namespace loopwright::county
