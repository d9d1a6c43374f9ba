// Places on a county's plan, in metres east and north of its origin, and the geometry of lines there.
//
//   Spot middle = towards(a, b, apart(a, b) / 2);
//
// Rules: coordinates are whole centimetres, so that equal places compare equal; angles are radians,
// anticlockwise from east.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace loopwright::county {

struct Spot {
  long x_cm = 0;
  long y_cm = 0;
  [[nodiscard]] double x() const { return static_cast<double>(x_cm) / 100; }
  [[nodiscard]] double y() const { return static_cast<double>(y_cm) / 100; }
  friend constexpr auto operator<=>(const Spot&, const Spot&) = default;
};

/// The nearest spot to a place in metres.
Spot spot(double x_m, double y_m);

double apart(Spot a, Spot b);
/// From a towards b; beyond it when the metres are more than there are. Rules: a and b differ.
Spot towards(Spot a, Spot b, double metres);
Spot on_circle(Spot centre, double radius_m, double angle);
double angle_of(Spot from, Spot to);
/// Change of heading when going a-b-c, in (-pi, pi]; positive = to the left.
double turn_at(Spot a, Spot b, Spot c);

/// Where the segments a-b and c-d cross or touch; nothing when they don't or are parallel.
std::optional<Spot> meeting(Spot a, Spot b, Spot c, Spot d);

/// A Catmull-Rom curve through all points in steps of about 25 m, thinned where it is straight.
std::vector<Spot> bend(std::span<const Spot> through);
/// The line moved to its left by so many metres; to its right when negative.
std::vector<Spot> beside(std::span<const Spot> line, double metres);
double length_m(std::span<const Spot> line);
/// The place so many metres along a line and so far to the left of it; clamped to its ends.
Spot along(std::span<const Spot> line, double metres, double left_m = 0);

/// Nearest place on a line: how far off it lies, on which segment, and where.
struct Foot {
  double off_m = 0;
  std::size_t segment = 0;
  Spot at;
};
Foot nearest(std::span<const Spot> line, Spot from);

bool inside(std::span<const Spot> polygon, Spot place);

struct SpotHash {
  std::size_t operator()(const Spot& s) const {
    return std::hash<long>{}(s.x_cm * 1'000'003 + s.y_cm);
  }
};

}  // namespace loopwright::county
