#include "county/grow_parking.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

namespace loopwright::county {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double bay_m2 = 24;   // of surface a car, aisles and all; common practice, no source
constexpr double aisle_m = 17;  // from one aisle to the next: 6 m of aisle, two bays of 4.8 m

/// Metres from the way in: ahead and to the left.
struct Frame {
  Spot at;
  double heading;
  [[nodiscard]] Spot place(double ahead, double left) const {
    return spot(at.x() + ahead * std::cos(heading) - left * std::sin(heading),
                at.y() + ahead * std::sin(heading) + left * std::cos(heading));
  }
};

std::size_t add_way(Ground& ground, std::vector<Spot> points, bool aisle, bool closed) {
  Line line{.kind = LineKind::service};
  line.points = std::move(points);
  line.tags = {{"highway", "service"}};
  if (aisle) line.tags["service"] = "parking_aisle";
  if (closed) line.ends[1] = End::closed;
  line.grown = true;
  return ground.add(std::move(line));
}

Area surface(const Frame& frame, double depth, double half) {
  const auto bays = static_cast<int>(2 * half * depth / bay_m2);
  return {
      .corners = {frame.place(13, -half), frame.place(13 + depth, -half),
                  frame.place(13 + depth, half), frame.place(13, half)},
      .tags = {{"amenity", "parking"}, {"parking", "surface"}, {"capacity", std::to_string(bays)}}};
}

/// Whether the surface, and a little beyond it, is free.
bool room(const Ground& ground, const Frame& frame, double depth, double half) {
  const double far = 13 + depth + 6;
  const std::array<Spot, 4> corners{frame.place(9, -half - 6), frame.place(far, -half - 6),
                                    frame.place(far, half + 6), frame.place(9, half + 6)};
  for (std::size_t i = 0; i < corners.size(); ++i)
    if (ground.first_hit(corners[i], corners[(i + 1) % 4])) return false;
  const Spot middle = frame.place(13 + depth / 2, 0);
  for (const Hit& hit : ground.around(middle, std::hypot(depth / 2, half)))
    if (inside(corners, hit.at)) return false;
  return !ground.first_hit(frame.at, middle) && !ground.in_area(middle);
}

/// A spine from the street, and aisles across it that end at the bays.
void draw_aisles(Ground& ground, const Frame& frame, double depth, double half) {
  std::vector<Spot> spine{frame.at};
  std::vector<double> rows;
  for (double row = 13 + aisle_m / 2; row < 13 + depth - 4; row += aisle_m) rows.push_back(row);
  for (const double row : rows) spine.push_back(frame.place(row, 0));
  add_way(ground, spine, false, false);
  for (const double row : rows)
    for (const double side : {1.0, -1.0})
      add_way(ground, {frame.place(row, 0), frame.place(row, side * (half - 4))}, true, true);
}

/// A loop round the middle rows.
void draw_loop(Ground& ground, const Frame& frame, double depth, double half) {
  const double near = 13 + aisle_m / 2;
  const double far = 13 + depth - aisle_m / 2;
  const double left = half - 5;
  const Spot gate = frame.place(near, 0);
  const Spot back = frame.place(far, 0);
  add_way(ground, {frame.at, gate}, false, false);
  for (const double side : {1.0, -1.0})
    add_way(ground, {gate, frame.place(near, side * left), frame.place(far, side * left), back},
            true, false);
  if (half > 22) add_way(ground, {gate, back}, true, false);
}

}  // namespace

bool put_parking(Ground& ground, const Start& start, Dice& dice) {
  const Frame frame{start.at, start.heading};
  struct Size {
    double depth, half;
  };
  for (const Size size : {Size{68, 34}, Size{51, 28}, Size{36, 20}, Size{24, 15}}) {
    if (!room(ground, frame, size.depth, size.half)) continue;
    ground.share(start.line, start.at);
    if (size.depth > 30 && dice.below(2) == 0) {
      draw_loop(ground, frame, size.depth, size.half);
    } else {
      draw_aisles(ground, frame, size.depth, size.half);
    }
    ground.add(surface(frame, size.depth, size.half));
    return true;
  }
  return false;
}

}  // namespace loopwright::county
