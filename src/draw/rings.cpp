// Method: a ring of the map is drawn as a circle when its own radius on paper is below `least`; two
// that lie close share what room there is between them.
#include "draw/rings.hpp"

#include <algorithm>

#include "draw/map_lines.hpp"

namespace loopwright::draw {
namespace {

constexpr double least_ring = 1.9, least_mini = 1.25;

bool is_mini(road::Kind kind) {
  return kind == road::Kind::mini_roundabout || kind == road::Kind::double_mini;
}

void add(std::vector<Ring>& rings, const Ring& ring, const MapFrame& frame) {
  const auto same = [&](const Ring& other) { return length_of(other.middle - ring.middle) < 0.05; };
  if (holds(frame.map, ring.middle) && std::none_of(rings.begin(), rings.end(), same))
    rings.push_back(ring);
}

std::vector<NodeId> nodes_on(const road::Roads& roads, PlaceId id) {
  const auto nodes = roads.nodes_of(id);
  return {nodes.begin(), nodes.end()};
}

/// A mini is a node, a double mini two; all else has a middle and a diameter.
void add_place(std::vector<Ring>& rings, const road::Roads& roads, PlaceId id,
               const MapFrame& frame) {
  const road::Place& place = roads.places[id.index()];
  if (is_mini(place.kind)) {
    for (const NodeId node : roads.nodes_of(id))
      add(rings, {frame.spot_of(roads.nodes[node.index()].at), least_mini, 0, true, {node}}, frame);
  } else if (road::meets(place.kind, road::Kind::roundabout)) {
    const double true_radius = place.diameter_m / 2.0 * frame.mm_per_m;
    if (true_radius < least_ring)
      add(rings, {frame.spot_of(place.at), least_ring, true_radius, false, nodes_on(roads, id)},
          frame);
  }
}

/// Room for both where two would touch.
void part(Ring& a, Ring& b) {
  const double between = length_of(b.middle - a.middle);
  if (a.radius + b.radius <= between) return;
  const double share = std::max(0.45 * between, 0.5);
  a.radius = std::min(a.radius, share);
  b.radius = std::min(b.radius, share);
}

/// True when a line leads to a ring, not only past it.
bool meets(const Line& line, const Ring& ring) {
  // Rings are no true circles: half a line's width more than their mean.
  constexpr double slack = 0.4;
  const double reach = std::min(ring.true_radius + slack, ring.radius);
  return passes_near(line, ring.middle, reach) && distance_to(line, ring.middle) < reach;
}

}  // namespace

std::vector<Ring> small_rings(const road::Roads& roads, const MapFrame& frame) {
  std::vector<Ring> rings;
  for (std::size_t row = 0; row < roads.places.size(); ++row)
    add_place(rings, roads, PlaceId{row}, frame);
  for (std::size_t i = 0; i < rings.size(); ++i)
    for (std::size_t j = i + 1; j < rings.size(); ++j) part(rings[i], rings[j]);
  return rings;
}

std::vector<Line> outside(const Line& line, const std::vector<Ring>& rings) {
  std::vector<Line> parts{line};
  for (const Ring& ring : rings) {
    if (!meets(line, ring)) continue;
    std::vector<Line> left;
    for (const Line& piece : parts) cut_circle(piece, ring.middle, ring.radius, left);
    parts = std::move(left);
  }
  return parts;
}

}  // namespace loopwright::draw
