// 1. All segments near the outline are cut where they cross, so that edges meet at their ends only.
// 2. Points with one edge are taken away with it, over and over: dead ends bound nothing.
// 3. Every edge is walked once in each direction, at each point taking the next edge clockwise from
//    the one come by: what comes back to its start anticlockwise is a face.
#include "county/faces.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace loopwright::county {
namespace {

constexpr double least_face_m2 = 12'000;    // below there is no room for a street with houses
constexpr double most_face_m2 = 4'000'000;  // beyond it is country, not a block

struct Segment {
  Spot a;
  Spot b;
};

bool bounds_ground(LineKind kind) {
  return kind == LineKind::ring || kind == LineKind::road || kind == LineKind::rail ||
         kind == LineKind::water;
}

struct Box {
  long left, low, right, high;
};

Box box_of(std::span<const Spot> spots) {
  Box box{spots[0].x_cm, spots[0].y_cm, spots[0].x_cm, spots[0].y_cm};
  for (const Spot& at : spots) {
    box = {std::min(box.left, at.x_cm), std::min(box.low, at.y_cm), std::max(box.right, at.x_cm),
           std::max(box.high, at.y_cm)};
  }
  return box;
}

std::vector<Segment> segments_near(const Drawing& county, const Box& box) {
  std::vector<Segment> found;
  for (const Line& line : county.lines) {
    if (!bounds_ground(line.kind)) continue;
    for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
      const Segment segment{line.points[i], line.points[i + 1]};
      const auto [left, right] = std::minmax(segment.a.x_cm, segment.b.x_cm);
      const auto [low, high] = std::minmax(segment.a.y_cm, segment.b.y_cm);
      if (left <= box.right && right >= box.left && low <= box.high && high >= box.low) {
        found.push_back(segment);
      }
    }
  }
  return found;
}

using Edges = std::map<Spot, std::set<Spot>>;

/// Where a segment is cut by those after it in order of their left ends, and they by it.
void cut_crossings(const std::vector<Segment>& segments, std::vector<std::set<Spot>>& cuts) {
  std::vector<std::size_t> order(segments.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  const auto left = [&](std::size_t i) { return std::min(segments[i].a.x_cm, segments[i].b.x_cm); };
  std::ranges::sort(order, [&](std::size_t i, std::size_t j) {
    return std::pair(left(i), i) < std::pair(left(j), j);
  });
  for (std::size_t m = 0; m < order.size(); ++m) {
    const Segment& one = segments[order[m]];
    const long right = std::max(one.a.x_cm, one.b.x_cm);
    for (std::size_t n = m + 1; n < order.size() && left(order[n]) <= right; ++n) {
      const Segment& other = segments[order[n]];
      if (one.a == other.a || one.a == other.b || one.b == other.a || one.b == other.b) continue;
      if (const auto place = meeting(one.a, one.b, other.a, other.b)) {
        cuts[order[m]].insert(*place);
        cuts[order[n]].insert(*place);
      }
    }
  }
}

Edges edges_of(const std::vector<Segment>& segments) {
  std::vector<std::set<Spot>> cuts(segments.size());
  cut_crossings(segments, cuts);
  Edges edges;
  for (std::size_t i = 0; i < segments.size(); ++i) {
    std::vector<Spot> chain(cuts[i].begin(), cuts[i].end());
    chain.push_back(segments[i].a);
    chain.push_back(segments[i].b);
    std::ranges::sort(chain, {}, [&](Spot at) { return std::pair(apart(segments[i].a, at), at); });
    for (std::size_t k = 0; k + 1 < chain.size(); ++k) {
      if (chain[k] == chain[k + 1]) continue;
      edges[chain[k]].insert(chain[k + 1]);
      edges[chain[k + 1]].insert(chain[k]);
    }
  }
  return edges;
}

void take_dead_ends_away(Edges& edges) {
  std::vector<Spot> ends;
  for (const auto& [at, to] : edges) {
    if (to.size() == 1) ends.push_back(at);
  }
  while (!ends.empty()) {
    const Spot end = ends.back();
    ends.pop_back();
    if (edges[end].size() != 1) continue;
    const Spot beyond = *edges[end].begin();
    edges[end].clear();
    edges[beyond].erase(end);
    if (edges[beyond].size() == 1) ends.push_back(beyond);
  }
}

/// The edge to take at a point when coming from another: the first one clockwise from there.
Spot next_from(const Edges& edges, Spot from, Spot at) {
  const double back = angle_of(at, from);
  Spot best = from;
  double least = 1e9;
  for (const Spot& to : edges.at(at)) {
    if (to == from) continue;
    double turn = back - angle_of(at, to);
    while (turn <= 0) turn += 2 * M_PI;
    if (turn < least) {
      least = turn;
      best = to;
    }
  }
  return best;
}

std::vector<Spot> face_at(const Edges& edges, std::set<std::pair<Spot, Spot>>& walked, Spot a,
                          Spot b) {
  std::vector<Spot> corners;
  while (walked.insert({a, b}).second) {
    corners.push_back(a);
    const Spot next = next_from(edges, a, b);
    a = b;
    b = next;
  }
  return corners;
}

Spot middle_of(std::span<const Spot> corners) {
  double x = 0;
  double y = 0;
  for (const Spot& at : corners) {
    x += at.x();
    y += at.y();
  }
  const auto count = static_cast<double>(corners.size());
  return spot(x / count, y / count);
}

}  // namespace

double area_m2(std::span<const Spot> corners) {
  double twice = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Spot& a = corners[i];
    const Spot& b = corners[(i + 1) % corners.size()];
    twice += a.x() * b.y() - b.x() * a.y();
  }
  return twice / 2;
}

std::vector<std::vector<Spot>> faces(const Drawing& county, std::span<const Spot> outline) {
  Edges edges = edges_of(segments_near(county, box_of(outline)));
  take_dead_ends_away(edges);
  std::vector<std::vector<Spot>> found;
  std::set<std::pair<Spot, Spot>> walked;
  for (const auto& [at, ends] : edges) {
    for (const Spot& to : ends) {
      std::vector<Spot> corners = face_at(edges, walked, at, to);
      if (corners.size() < 3 || area_m2(corners) <= 0) continue;
      if (inside(outline, middle_of(corners))) found.push_back(std::move(corners));
    }
  }
  return found;
}

void grow_infill(Drawing& county, const Quarter& ground, Dice& dice) {
  for (const std::vector<Spot>& face : faces(county, ground.outline)) {
    const double area = area_m2(face);
    if (area < least_face_m2 || area > most_face_m2) continue;
    Quarter block = ground;
    block.outline = face;
    grow_quarter(county, block, dice);
  }
}

}  // namespace loopwright::county
