// Method: lines are kept as discs in cells of paper; two areas are apart when a side of one of them
// has all of the other beyond it (separating axes).
#include "draw/taken.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "draw/map_lines.hpp"

namespace loopwright::draw {
namespace {

constexpr double cell_mm = 5, most_radius = 5;

double dot(Spot a, Spot b) {
  return a.x * b.x + a.y * b.y;
}

std::int64_t cell_of(double x, double y) {
  return static_cast<std::int64_t>(std::floor(x / cell_mm)) * 100'000 +
         static_cast<std::int64_t>(std::floor(y / cell_mm));
}

/// Directions of an area's sides: along its words, and down.
std::array<Spot, 2> sides_of(const Area& area) {
  const Spot along = towards_deg(area.turned + 90);
  return {along, Spot{-along.y, along.x}};
}

}  // namespace

Area area_of(const Label& label) {
  const Extent extent = extent_of(label);
  double left = 0;
  if (label.type.align == Align::middle) left = -extent.width / 2;
  if (label.type.align == Align::right) left = -extent.width;
  Area area{{}, extent.width, extent.height, label.turned};
  const auto [along, down] = sides_of(area);
  area.middle = label.at + (left + extent.width / 2) * along + extent.height / 2 * down;
  return area;
}

Label label_in(const Area& area, std::string text, Type type) {
  type.align = Align::middle;
  const Spot down = sides_of(area)[1];
  return {area.middle - area.height / 2 * down, std::move(text), type, 0, area.turned};
}

Taken::Kept Taken::kept(const Area& area) {
  const auto sides = sides_of(area);
  const Spot a = area.width / 2 * sides[0], b = area.height / 2 * sides[1], m = area.middle;
  return {area, sides, {m - a - b, m + a - b, m + a + b, m - a + b}, length_of(a + b)};
}

/// True when a side of `one` has all of `other` beyond it.
bool Taken::parted_by(const Kept& one, const Kept& other) {
  for (std::size_t i = 0; i < one.sides.size(); ++i) {
    const double half = (i == 0 ? one.area.width : one.area.height) / 2;
    double least = 1e9, most = -1e9;
    for (const Spot corner : other.corners) {
      const double at = dot(corner - one.area.middle, one.sides[i]);
      least = std::min(least, at), most = std::max(most, at);
    }
    if (least >= half || most <= -half) return true;
  }
  return false;
}

bool Taken::touch(const Kept& kept, Spot middle, double radius) {
  const Spot off = middle - kept.area.middle;
  const double x = std::max(std::abs(dot(off, kept.sides[0])) - kept.area.width / 2, 0.0);
  const double y = std::max(std::abs(dot(off, kept.sides[1])) - kept.area.height / 2, 0.0);
  return x * x + y * y < radius * radius;
}

void Taken::add(const Area& area) {
  areas_.push_back(kept(area));
}

void Taken::add_disc(Spot middle, double radius) {
  discs_[cell_of(middle.x, middle.y)].push_back({middle, std::min(radius, most_radius)});
}

void Taken::add_line(const Line& line, double half_width) {
  for (const Spot spot : with_steps(line, std::max(half_width, 0.5))) add_disc(spot, half_width);
}

bool Taken::touches_disc(const Kept& kept) const {
  const double reach = kept.reach + most_radius;
  const Spot middle = kept.area.middle;
  for (double x = middle.x - reach; x < middle.x + reach + cell_mm; x += cell_mm)
    for (double y = middle.y - reach; y < middle.y + reach + cell_mm; y += cell_mm) {
      const auto cell = discs_.find(cell_of(x, y));
      if (cell == discs_.end()) continue;
      for (const Round& disc : cell->second)
        if (touch(kept, disc.middle, disc.radius)) return true;
    }
  return false;
}

bool Taken::free(const Area& area) const {
  const Kept asked = kept(area);
  for (const Spot corner : asked.corners)
    if (!holds(page_, corner)) return false;
  for (const Kept& other : areas_)
    if (near(area.middle, other.area.middle, asked.reach + other.reach) &&
        !parted_by(asked, other) && !parted_by(other, asked))
      return false;
  return !touches_disc(asked);
}

bool Taken::free_disc(Spot middle, double radius) const {
  if (!holds(page_, middle - Spot{radius, radius}) || !holds(page_, middle + Spot{radius, radius}))
    return false;
  for (const Kept& one : areas_)
    if (touch(one, middle, radius)) return false;
  return !touches_disc(kept({middle, 2 * radius * 0.7, 2 * radius * 0.7, 0}));
}

}  // namespace loopwright::draw
