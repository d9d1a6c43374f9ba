// Method:
// 1. Two chords follow each other along the line, each a quarter of the radius long; where the
//    heading turns from one to the other by a quarter of a radian, as it does on an arc of that
//    radius, the road bends more sharply. Asked every 10 m. Chords of that length don't see how a
//    mapper's hand shook.
// 2. Points that bend at most 200 m apart are joined: a series of bends.
// 3. A piece's share is the part of it between the ends of such spans, each lengthened by half a
//    chord.
// The radius: v * v = 28.28 R, with v in km/h and R in metres, 0.22 of the earth's pull sideways:
// the sharpest of the design table of DMRB CD 109 (before: TD 9, table 3), two steps below what is
// desirable; from memory. 330 m at 60 mph, 147 m at 40 mph. 200 m is ours.
#include "bends.hpp"

#include "flat.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace loopwright::mark {
namespace {

constexpr double v2_per_radius = 28.28, kmh_per_mps = 3.6;
constexpr double chord_share = 0.25, step_m = 10, joined_within_m = 200;
constexpr double turn_deg = chord_share * 180 / std::numbers::pi;

struct Span {
  double from_m = 0, to_m = 0;
};

/// Metres along the line where it bends more sharply than the chords allow. What is clearly straighter in the plane
/// isn't measured on the earth.
std::vector<double> sharp_points(const RoadLine& line, double chord_m) {
  const Flat flat(line.points, turn_deg);
  if (flat.is_straight(line.points)) return {};
  std::vector<Point> points;
  walk_evenly(line.points, step_m, [&](double, Point at) { points.push_back(at); });
  std::vector<double> sharp;
  if (points.size() < 3) return sharp;
  const double step = length_m(line.points) / static_cast<double>(points.size() - 1);
  const auto reach = static_cast<std::size_t>(std::max(1.0, std::round(chord_m / step)));
  for (std::size_t i = reach; i + reach < points.size(); ++i) {
    const Point before = points[i - reach], at = points[i], after = points[i + reach];
    if (flat.turns_less(before, at, after)) continue;
    const double turn = heading_change_deg(bearing_deg(before, at), bearing_deg(at, after));
    if (std::abs(turn) >= turn_deg) sharp.push_back(static_cast<double>(i) * step);
  }
  return sharp;
}

std::vector<Span> joined(const std::vector<double>& sharp, double longer_m) {
  std::vector<Span> spans;
  for (const double at : sharp) {
    if (!spans.empty() && at - spans.back().to_m <= joined_within_m + longer_m) {
      spans.back().to_m = at + longer_m;
    } else {
      spans.push_back({at - longer_m, at + longer_m});
    }
  }
  return spans;
}

}  // namespace

double least_radius_m(double metres_per_second) {
  const double kmh = metres_per_second * kmh_per_mps;
  return kmh * kmh / v2_per_radius;
}

Lengthening lengthening_for_bends(double radius_m) {
  return {joined_within_m + chord_share * radius_m, road::piece_flag::ring};
}

double share_bending(const RoadLine& line, double radius_m) {
  const double chord_m = chord_share * radius_m;
  const double from = line.before_m, to = line.before_m + line.piece_m;
  double inside = 0;
  for (const Span& span : joined(sharp_points(line, chord_m), chord_m / 2)) {
    inside += std::max(0.0, std::min(to, span.to_m) - std::max(from, span.from_m));
  }
  return line.piece_m > 0 ? inside / line.piece_m : 0;
}

}  // namespace loopwright::mark
