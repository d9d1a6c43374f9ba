// Squares of 64 m hold the segments that touch them, by the box round each segment; a segment is
// entered in pieces no longer than a square, so that a straight road of 2 km doesn't fill a box.
#include "county/grow_ground.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

namespace loopwright::county {
namespace {

constexpr long square_cm = 6400;
constexpr double margin_m = 400;
constexpr double snap_m = 4;    // a join this near to a Spot of the line uses that Spot
constexpr double behind_m = 1;  // a hit this near to where one starts is the start itself

long square_of(long cm) {
  return cm >= 0 ? cm / square_cm : -((-cm + square_cm - 1) / square_cm);
}

struct Box {
  Spot low;
  Spot high;
};

Box box_of(std::span<const Spot> points, double margin) {
  const long m = std::lround(margin * 100);
  Box box{points.front(), points.front()};
  for (const Spot p : points) {
    box.low = {std::min(box.low.x_cm, p.x_cm), std::min(box.low.y_cm, p.y_cm)};
    box.high = {std::max(box.high.x_cm, p.x_cm), std::max(box.high.y_cm, p.y_cm)};
  }
  return {{box.low.x_cm - m, box.low.y_cm - m}, {box.high.x_cm + m, box.high.y_cm + m}};
}

bool overlap(const Box& a, const Box& b) {
  return a.low.x_cm <= b.high.x_cm && b.low.x_cm <= a.high.x_cm && a.low.y_cm <= b.high.y_cm &&
         b.low.y_cm <= a.high.y_cm;
}

/// The nearest place of a segment.
Hit foot(std::size_t line, Spot a, Spot b, Spot p) {
  const auto dx = static_cast<double>(b.x_cm - a.x_cm);
  const auto dy = static_cast<double>(b.y_cm - a.y_cm);
  const auto px = static_cast<double>(p.x_cm - a.x_cm);
  const auto py = static_cast<double>(p.y_cm - a.y_cm);
  const double share = std::clamp((px * dx + py * dy) / (dx * dx + dy * dy), 0.0, 1.0);
  const double away_cm = std::hypot(px - share * dx, py - share * dy);
  const Spot at{a.x_cm + std::lround(share * dx), a.y_cm + std::lround(share * dy)};
  return {.line = line, .at = at, .away_m = away_cm / 100, .angle = std::atan2(dy, dx)};
}

}  // namespace

int rank(const Line& line) {
  static const std::map<std::string, int, std::less<>> ranks{
      {"service", 0},  {"residential", 1},   {"living_street", 1}, {"unclassified", 2},
      {"tertiary", 3}, {"tertiary_link", 3}, {"secondary", 4},     {"secondary_link", 4},
      {"primary", 5},  {"primary_link", 5},  {"trunk", 6},         {"trunk_link", 6},
      {"motorway", 6}, {"motorway_link", 6}};
  const auto highway = line.tags.find("highway");
  if (highway == line.tags.end()) return -1;
  const auto found = ranks.find(highway->second);
  return found == ranks.end() ? -1 : found->second;
}

Ground::Ground(Drawing& county, std::span<const Spot> outline) : county_(&county) {
  const Box box = box_of(outline, margin_m);
  for (std::size_t n = 0; n < county.lines.size(); ++n) {
    const Line& line = county.lines[n];
    if (line.kind == LineKind::outline || line.points.size() < 2) continue;
    if (!overlap(box, box_of(line.points, 0))) continue;
    for (std::size_t i = 0; i < line.points.size(); ++i) {
      if (i > 0) enter(n, line.points[i - 1], line.points[i]);
      if (rank(line) >= 0) count(line.points[i], i == 0 || i + 1 == line.points.size() ? 1 : 2);
      if (county.node_tags.contains(line.points[i])) mark(line.points[i]);
    }
  }
  for (std::size_t n = 0; n < county.areas.size(); ++n) {
    const std::vector<Spot>& corners = county.areas[n].corners;
    if (!overlap(box, box_of(corners, 0))) continue;
    areas_.push_back(n);
    for (std::size_t i = 0; i < corners.size(); ++i)
      enter(no_line, corners[i], corners[(i + 1) % corners.size()]);
  }
}

void Ground::enter(std::size_t line, Spot a, Spot b) {
  const double size = apart(a, b);
  if (size == 0) return;
  const int pieces = static_cast<int>(size * 100 / square_cm) + 1;
  Spot from = a;
  for (int i = 1; i <= pieces; ++i) {
    const Spot to = i == pieces ? b : towards(a, b, size * i / pieces);
    const Box box = box_of(std::array{from, to}, 0);
    for (long x = square_of(box.low.x_cm); x <= square_of(box.high.x_cm); ++x)
      for (long y = square_of(box.low.y_cm); y <= square_of(box.high.y_cm); ++y) {
        auto& square = squares_[{x, y}];
        if (square.empty() || square.back().a != a || square.back().b != b)
          square.push_back({line, a, b});
      }
    from = to;
  }
}

template <typename Visit>
void Ground::visit(Spot low, Spot high, Visit&& visit) const {
  for (long x = square_of(low.x_cm); x <= square_of(high.x_cm); ++x)
    for (long y = square_of(low.y_cm); y <= square_of(high.y_cm); ++y)
      if (const auto found = squares_.find({x, y}); found != squares_.end())
        for (const Segment& segment : found->second) visit(segment);
}

void Ground::mark(Spot at) {
  auto& square = marks_[{square_of(at.x_cm), square_of(at.y_cm)}];
  if (std::find(square.begin(), square.end(), at) == square.end()) square.push_back(at);
}

void Ground::count(Spot at, int arms) {
  if ((arms_[at] += arms) >= 3) mark(at);
}

std::size_t Ground::add(Line line) {
  const std::size_t number = county_->lines.size();
  const bool driven = rank(line) >= 0;
  for (std::size_t i = 0; i < line.points.size(); ++i) {
    if (i > 0) enter(number, line.points[i - 1], line.points[i]);
    if (driven) count(line.points[i], i == 0 || i + 1 == line.points.size() ? 1 : 2);
  }
  if (driven) {
    mark(line.points.front());
    mark(line.points.back());
  }
  county_->lines.push_back(std::move(line));
  return number;
}

void Ground::add(Area area) {
  for (std::size_t i = 0; i < area.corners.size(); ++i)
    enter(no_line, area.corners[i], area.corners[(i + 1) % area.corners.size()]);
  areas_.push_back(county_->areas.size());
  county_->areas.push_back(std::move(area));
}

std::optional<Hit> Ground::first_hit(Spot a, Spot b) const {
  const Box box = box_of(std::array{a, b}, 0);
  std::optional<Hit> best;
  visit(box.low, box.high, [&](const Segment& s) {
    const auto place = meeting(a, b, s.a, s.b);
    if (!place) return;
    const double away = apart(a, *place);
    if (away <= behind_m || (best && best->away_m <= away)) return;
    best = {.line = s.line, .at = *place, .away_m = away, .angle = angle_of(s.a, s.b)};
  });
  return best;
}

std::vector<Hit> Ground::around(Spot place, double reach_m) const {
  const Box box = box_of(std::array{place}, reach_m);
  std::vector<Hit> hits;
  visit(box.low, box.high, [&](const Segment& s) {
    const Hit hit = foot(s.line, s.a, s.b, place);
    if (hit.away_m <= reach_m) hits.push_back(hit);
  });
  return hits;
}

std::optional<Hit> Ground::nearest(Spot place, double reach_m, const Match& match) const {
  std::optional<Hit> best;
  for (double reach = std::min(reach_m, 50.0); !best; reach = std::min(reach_m, 2 * reach)) {
    const Box box = box_of(std::array{place}, reach);
    visit(box.low, box.high, [&](const Segment& s) {
      if (s.line == no_line || !match(line(s.line))) return;
      const Hit hit = foot(s.line, s.a, s.b, place);
      if (hit.away_m <= reach && (!best || hit.away_m < best->away_m)) best = hit;
    });
    if (reach == reach_m) break;
  }
  return best;
}

bool Ground::in_area(Spot place) const {
  return std::any_of(areas_.begin(), areas_.end(),
                     [&](std::size_t n) { return inside(county_->areas[n].corners, place); });
}

Spot Ground::would_share(std::size_t number, Spot at) const {
  const std::vector<Spot>& points = line(number).points;
  const Foot found = county::nearest(points, at);
  const Spot a = points[found.segment];
  const Spot b = points[found.segment + 1];
  const Spot& near = apart(a, at) < apart(b, at) ? a : b;
  return apart(near, found.at) < snap_m ? near : found.at;
}

void Ground::share(std::size_t number, Spot at) {
  std::vector<Spot>& points = county_->lines[number].points;
  if (std::find(points.begin(), points.end(), at) != points.end()) return;
  const Foot found = county::nearest(points, at);
  points.insert(points.begin() + static_cast<std::ptrdiff_t>(found.segment) + 1, at);
  if (rank(line(number)) >= 0) count(at, 2);
}

int Ground::arms(Spot at) const {
  const auto found = arms_.find(at);
  return found == arms_.end() ? 0 : found->second;
}

double Ground::junction_off(Spot at, double reach_m) const {
  const Box box = box_of(std::array{at}, reach_m);
  double best = reach_m;
  for (long x = square_of(box.low.x_cm); x <= square_of(box.high.x_cm); ++x)
    for (long y = square_of(box.low.y_cm); y <= square_of(box.high.y_cm); ++y)
      if (const auto found = marks_.find({x, y}); found != marks_.end())
        for (const Spot mark : found->second)
          if (mark != at) best = std::min(best, apart(mark, at));
  return best;
}

}  // namespace loopwright::county
