// 1. Going straight on: at a node with two road ends the other one; at a junction the road whose
//    bearing differs least from ours. Points of a map may lie upon each other; a walk over pieces between
//    such, which has no length, would never end.
// 2. Bearings between two distances are taken on the joined shape of the stretches walked.
// 3. Nodes around a node: Dijkstra over pieces, both ways, few at a time, so in a sorted vector.
#include "approach.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::mark {
namespace {

// Beyond this a road has turned off, it doesn't go on. Ours.
constexpr double straight_within_deg = 60;

double bend_deg(const road::Roads& roads, StretchId from, StretchId to) {
  return std::abs(
      heading_change_deg(road::bearing_in_deg(roads, from), road::bearing_out_deg(roads, to)));
}

void append_shape(const road::Roads& roads, StretchId stretch, std::vector<Point>& line) {
  const std::span<const Point> shape = roads.shape_of(stretch.piece());
  if (stretch.against()) {
    line.insert(line.end(), shape.rbegin(), shape.rend());
  } else {
    line.insert(line.end(), shape.begin(), shape.end());
  }
}

std::vector<Point> line_away(const road::Roads& roads, StretchId away, double metres) {
  std::vector<Point> line;
  double so_far = 0;
  for (StretchId s = away; s.known() && so_far < metres; s = straight_on(roads, s)) {
    append_shape(roads, s, line);
    so_far += roads.piece(s).length_m;
  }
  return line;
}

/// Puts a way to a node in, or shortens the known one.
void relax(std::vector<Reached>& known, const Reached& found) {
  const auto at = std::ranges::find(known, found.node, &Reached::node);
  if (at == known.end()) {
    known.push_back(found);
  } else if (found.metres < at->metres) {
    *at = found;
  }
}

}  // namespace

bool is_ring(const road::Roads& roads, StretchId stretch) {
  return (roads.piece(stretch).flags & road::piece_flag::ring) != 0;
}

bool gets_nowhere(const road::Roads& roads, StretchId from, StretchId to) {
  return roads.piece(from).length_m == 0 && roads.piece(to).length_m == 0;
}

StretchId straight_on(const road::Roads& roads, StretchId stretch) {
  const NodeId node = roads.to_node(stretch);
  const bool only_way_on = road_ends(roads, node) == 2;
  if (const auto leaving = roads.leaving(node); only_way_on && leaving.size() == 2) {
    const StretchId next = leaving[leaving[0] == stretch.back() ? 1 : 0];
    return is_ring(roads, next) || gets_nowhere(roads, stretch, next) ? StretchId{} : next;
  }
  StretchId best;
  double least = only_way_on ? std::numeric_limits<double>::max() : straight_within_deg;
  for (const StretchId next : roads.leaving(node)) {
    if (next == stretch.back() || is_ring(roads, next) || gets_nowhere(roads, stretch, next))
      continue;
    const double bend = bend_deg(roads, stretch, next);
    if (bend < least) best = next, least = bend;
  }
  return best;
}

double bearing_away_deg(const road::Roads& roads, StretchId away, double from_m, double to_m) {
  const std::vector<Point> line = line_away(roads, away, to_m);
  const double end_m = std::min(to_m, loopwright::length_m(line));
  const double start_m = std::min(from_m, end_m / 2);
  return bearing_deg(point_along(line, start_m), point_along(line, end_m));
}

Point point_away(const road::Roads& roads, StretchId away, double metres) {
  return point_along(line_away(roads, away, metres), metres);
}

std::vector<StretchId> walk_on(const road::Roads& roads, StretchId first, double limit_m) {
  std::vector<StretchId> walk;
  double metres = 0;
  for (StretchId s = first; s.known(); s = straight_on(roads, s)) {
    metres += roads.piece(s).length_m;
    if (metres > limit_m || (!walk.empty() && s == first)) break;
    walk.push_back(s);
    if (road_ends(roads, roads.to_node(s)) != 2) break;
  }
  return walk;
}

double length_m(const road::Roads& roads, const std::vector<StretchId>& walk) {
  double metres = 0;
  for (const StretchId s : walk) metres += roads.piece(s).length_m;
  return metres;
}

std::vector<Reached> nodes_around(const road::Roads& roads, NodeId from, double limit_m) {
  std::vector<Reached> open = {{from, 0, {}}};
  std::vector<Reached> done;
  while (!open.empty()) {
    const auto nearest = std::ranges::min_element(open, {}, &Reached::metres);
    const Reached here = *nearest;
    open.erase(nearest);
    done.push_back(here);
    for (const StretchId out : roads.leaving(here.node)) {
      const Reached next{roads.to_node(out), here.metres + roads.piece(out).length_m, out};
      if (next.metres > limit_m || is_ring(roads, out)) continue;
      if (std::ranges::find(done, next.node, &Reached::node) == done.end()) relax(open, next);
    }
  }
  return done;
}

}  // namespace loopwright::mark
