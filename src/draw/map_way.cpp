// Method: 1. the shapes as points on paper; 2. where other points of the drive come the opposite way on
// the same ground or on our far side, the line moves to our side until both are apart; 3. what lies
// inside a small ring is replaced by the arc round it.
#include "draw/map_way.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "draw/drive_shape.hpp"
#include "draw/map_lines.hpp"

namespace loopwright::draw {
namespace {

// Ours: what two lines of the thickest ink and the paper between them take, and what counts as one road.
constexpr double lines_apart = 2.6, same_ground = 0.5;
constexpr double simple_off = 0.08;

void add(Way& way, Spot spot, std::size_t stretch) {
  if (!way.line.empty() && length_of(spot - way.line.back()) < 1e-6) return;
  const double step = way.line.empty() ? 0 : length_of(spot - way.line.back());
  way.along.push_back(way.along.empty() ? 0 : way.along.back() + step);
  way.line.push_back(spot);
  way.stretches.push_back(stretch);
}

Way as_driven(const road::Roads& roads, const wish::Loop& loop, const MapFrame& frame) {
  Way way;
  for (const DriveShape& shape : drive_shapes(roads, loop)) {
    Line line;
    for (const Point at : shape.points) line.push_back(frame.spot_of(at));
    line = simplified(line, simple_off);
    // What an enlarged part doesn't show needs no more than its corners.
    const double step = clipped(line, within(frame.map, -2 * lines_apart)).empty() ? 10 : way_step;
    for (const Spot spot : with_steps(line, step)) add(way, spot, shape.stretch);
  }
  return way;
}

/// Directions at each point, of length 1.
Line directions(const Line& line) {
  Line towards;
  for (std::size_t i = 0; i < line.size(); ++i)
    towards.push_back(unit(line[std::min(i + 1, line.size() - 1)] - line[i == 0 ? 0 : i - 1]));
  return towards;
}

double dot(Spot a, Spot b) {
  return a.x * b.x + a.y * b.y;
}

/// How far a point must move to its own side for another that comes the opposite way; 0: not at all.
double makes_room(Spot at, Spot towards, Spot far_side, Spot other, Spot other_towards) {
  const Spot off = other - at;
  if (dot(towards, other_towards) > -0.7 || std::abs(dot(off, towards)) > way_step) return 0;
  const double beside = dot(off, far_side);
  if (beside < -same_ground || beside > lines_apart) return 0;
  return (lines_apart - std::max(beside, 0.0)) / 2;
}

/// Means over the neighbours, so that a line moves aside gently.
std::vector<double> smooth(const std::vector<double>& values) {
  constexpr std::size_t reach = 3;
  std::vector<double> means(values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    const std::size_t from = i < reach ? 0 : i - reach, to = std::min(i + reach + 1, values.size());
    double sum = 0;
    for (std::size_t j = from; j < to; ++j) sum += values[j];
    means[i] = sum / static_cast<double>(to - from);
  }
  return means;
}

Way told_apart(const Way& way, Side driving) {
  const Line towards = directions(way.line);
  Line near_side;
  for (const Spot direction : towards)
    near_side.push_back((driving == Side::left ? 1.0 : -1.0) * left_of(direction));
  std::vector<double> moves(way.line.size(), 0);
  const auto ask = [&](std::size_t i, std::size_t j) {
    moves[i] = std::max(moves[i], makes_room(way.line[i], towards[i], -1.0 * near_side[i],
                                             way.line[j], towards[j]));
  };
  for_near_pairs(way.line, lines_apart + way_step, [&](std::size_t i, std::size_t j) {
    ask(i, j);
    ask(j, i);
  });
  moves = smooth(moves);
  Way moved;
  for (std::size_t i = 0; i < way.line.size(); ++i)
    add(moved, way.line[i] + moves[i] * near_side[i], way.stretches[i]);
  return moved;
}

/// The arc round a ring between two spots, in the direction of traffic.
Line round_ring(const Ring& ring, Spot enters, Spot leaves, Side driving) {
  constexpr double full = 360, back_out = 20;
  const double from = angle_deg(enters - ring.middle), to = angle_deg(leaves - ring.middle);
  double turn = std::fmod(driving == Side::left ? to - from + full : from - to + full, full);
  if (turn < back_out) turn += full;
  return arc(ring.middle, ring.radius, from, driving == Side::left ? turn : -turn);
}

Spot on_ring(const Ring& ring, Spot inside, Spot outside) {
  std::vector<Line> parts;
  cut_circle({outside, inside}, ring.middle, ring.radius, parts);
  return parts.empty() ? inside : parts.front().back();
}

/// What a way leads through rings by.
struct Driving {
  const road::Roads& roads;
  const wish::Loop& loop;
};

/// True when one of these stretches ends on the ring: the way leads through it, not only past it.
bool ends_on(const Driving& driving, const Ring& ring, std::size_t first, std::size_t last) {
  for (std::size_t i = first; i <= last; ++i) {
    const NodeId node = driving.roads.to_node(driving.loop.stretches[i].stretch);
    if (std::find(ring.nodes.begin(), ring.nodes.end(), node) != ring.nodes.end()) return true;
  }
  return false;
}

/// The way with the arc for each time it leads through this ring.
Way round_ring_of(const Way& way, const Ring& ring, const Driving& driving) {
  const Side side = driving.roads.info().region.side;
  const auto inside = [&](std::size_t i) { return near(way.line[i], ring.middle, ring.radius); };
  Way around;
  for (std::size_t i = 0; i < way.line.size(); ++i) {
    std::size_t end = i;
    while (end < way.line.size() && inside(end)) ++end;
    if (end == i || i == 0 || end == way.line.size() ||
        !ends_on(driving, ring, way.stretches[i - 1], way.stretches[end])) {
      for (; i < end; ++i) add(around, way.line[i], way.stretches[i]);
      if (i < way.line.size()) add(around, way.line[i], way.stretches[i]);
      continue;
    }
    const Line arc = round_ring(ring, on_ring(ring, way.line[i], way.line[i - 1]),
                                on_ring(ring, way.line[end - 1], way.line[end]), side);
    for (std::size_t k = 0; k < arc.size(); ++k)
      add(around, arc[k], way.stretches[i + k * (end - i) / arc.size()]);
    i = end - 1;
  }
  return around;
}

}  // namespace

std::size_t Way::end_of(std::size_t stretch) const {
  const auto after = std::upper_bound(stretches.begin(), stretches.end(), stretch);
  return after == stretches.begin() ? 0 : static_cast<std::size_t>(after - stretches.begin()) - 1;
}

std::size_t Way::point_at(double length) const {
  const auto at = std::lower_bound(along.begin(), along.end(), length);
  return std::min(static_cast<std::size_t>(at - along.begin()), along.size() - 1);
}

Spot Way::spot_at(double length) const {
  const std::size_t i = point_at(length);
  if (i == 0) return line.front();
  const double step = along[i] - along[i - 1];
  const double part = std::clamp((length - along[i - 1]) / step, 0.0, 1.0);
  return line[i - 1] + part * (line[i] - line[i - 1]);
}

Spot Way::direction_at(double length) const {
  return unit(spot_at(length + way_step) - spot_at(length - way_step));
}

Line Way::part(double from, double to) const {
  Line part{spot_at(from)};
  for (std::size_t i = point_at(from); i < line.size() && along[i] < to; ++i)
    part.push_back(line[i]);
  part.push_back(spot_at(to));
  return part;
}

Way way_of(const road::Roads& roads, const wish::Loop& loop, const MapFrame& frame,
           const std::vector<Ring>& rings) {
  Way way = told_apart(as_driven(roads, loop, frame), roads.info().region.side);
  for (const Ring& ring : rings)
    if (distance_to(way.line, ring.middle) < ring.radius)
      way = round_ring_of(way, ring, {roads, loop});
  return way;
}

}  // namespace loopwright::draw
