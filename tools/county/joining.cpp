#include "county/joining.hpp"

#include <algorithm>

#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

struct Box {
  Spot least;
  Spot most;
};

Box box(std::span<const Spot> points) {
  Box out{points.front(), points.front()};
  for (const Spot p : points) {
    out.least = {std::min(out.least.x_cm, p.x_cm), std::min(out.least.y_cm, p.y_cm)};
    out.most = {std::max(out.most.x_cm, p.x_cm), std::max(out.most.y_cm, p.y_cm)};
  }
  return out;
}

bool overlap(const Box& a, const Box& b) {
  return a.least.x_cm <= b.most.x_cm && b.least.x_cm <= a.most.x_cm &&
         a.least.y_cm <= b.most.y_cm && b.least.y_cm <= a.most.y_cm;
}

/// Where two segments cross, when they don't hang together at an end already.
std::optional<Spot> fresh_meeting(Spot a, Spot b, Spot c, Spot d) {
  if (a == c || a == d || b == c || b == d) return std::nullopt;
  return meeting(a, b, c, d);
}

std::ptrdiff_t after(std::size_t segment) {
  return static_cast<std::ptrdiff_t>(segment + 1);
}

}  // namespace

Spot add_point(Line& line, std::size_t segment, Spot place, double merge) {
  for (const Spot known : {line.points[segment], line.points[segment + 1]})
    if (known == place || apart(known, place) < merge) return known;
  line.points.insert(line.points.begin() + after(segment), place);
  return place;
}

std::vector<Spot> cross(Line& line, Line& other, double merge) {
  std::vector<Spot> shared;
  if (!overlap(box(line.points), box(other.points))) return shared;
  for (std::size_t i = 0; i + 1 < line.points.size(); ++i)
    for (std::size_t j = 0; j + 1 < other.points.size(); ++j) {
      const auto place =
          fresh_meeting(line.points[i], line.points[i + 1], other.points[j], other.points[j + 1]);
      if (!place) continue;
      const Spot taken = add_point(line, i, *place, merge);
      if (!holds(other, taken)) other.points.insert(other.points.begin() + after(j), taken);
      shared.push_back(taken);
      break;
    }
  return shared;
}

bool holds(const Line& line, Spot place) {
  return std::ranges::find(line.points, place) != line.points.end();
}

std::optional<Near> nearest_of(const Drawing& county, std::span<const std::size_t> among,
                               Spot place) {
  std::optional<Near> best;
  for (const std::size_t line : among) {
    const Foot foot = nearest(county.lines[line].points, place);
    if (!best || foot.off_m < best->foot.off_m) best = Near{line, foot};
  }
  return best;
}

int layer_of(const Tags& tags) {
  const auto layer = tags.find("layer");
  return layer == tags.end() ? 0 : read_int(layer->second).value_or(0);
}

}  // namespace loopwright::county
