// 1. central_island:traversable=yes on a ring way: a mini-roundabout with an island drawn.
// 2. A light on a node of the ring (a crossing's too: it stops the ring), or lights for vehicles
//    that face at least half of the entries, within 30 m of the ring (ours): signals.
//    Pedestrian lights on the arms alone don't make a signalled roundabout: at a pelican crossing
//    before a small roundabout the ring itself still works by giving way.
// 3. lanes=2 or more on a ring piece, or two lanes for cars into the ring on an entry
//    (lane_counts.cpp; a bus lane is none): several lanes.
// 4. Else a plain roundabout.
// Of several objects that say the same, the one with the least id is named.
#include "ring_kind.hpp"

#include <algorithm>
#include <optional>

#include "approach.hpp"
#include "facing.hpp"
#include "lane_counts.hpp"
#include "passing.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;

constexpr double light_within_m = 30;

struct Told {
  std::string tag;
  OsmObject source;
};

/// The first of two reasons, by object.
void keep_first(std::optional<Told>& kept, const Told& found) {
  if (!kept || found.source < kept->source) kept = found;
}

std::optional<Told> traversable_island(const Draft& draft, const road::Roads& roads,
                                       const Ring& ring) {
  std::optional<Told> told;
  for (const StretchId s : ring.stretches) {
    if (!draft.way_tags(s.piece()).is("central_island:traversable", "yes")) continue;
    keep_first(told, {"central_island:traversable=yes", way_object(roads.piece(s).way)});
  }
  return told;
}

Told light_at(const Draft& draft, const road::Roads& roads, NodeId node) {
  return {light_tag(draft.node_tags(node)), node_object(roads, node)};
}

std::optional<Told> light_on_ring(const Draft& draft, const road::Roads& roads, const Ring& ring) {
  constexpr std::uint32_t lights = road::node_flag::signals | road::node_flag::signal_crossing;
  std::optional<Told> told;
  for (const StretchId s : ring.stretches) {
    const NodeId node = roads.from_node(s);
    if ((roads.nodes[node.index()].flags & lights) == 0) continue;
    keep_first(told, light_at(draft, roads, node));
  }
  return told;
}

/// A light for vehicles that holds those who come in by an arm.
std::optional<Told> light_before(const Draft& draft, const road::Roads& roads,
                                 const JunctionArm& arm) {
  std::optional<Told> told;
  for (const ArmPart& part : arm.parts) {
    if (!part.in) continue;
    for (const Met& met : met_before(roads, part.away, light_within_m, road::node_flag::signals)) {
      const bool on_foot =
          (roads.nodes[met.node.index()].flags & road::node_flag::signal_crossing) != 0;
      if (!on_foot && faces(draft, roads, met.arriving, Sign::light)) {
        keep_first(told, light_at(draft, roads, met.node));
      }
    }
  }
  return told;
}

std::optional<Told> lights_on_entries(const Draft& draft, const road::Roads& roads,
                                      const std::vector<JunctionArm>& arms) {
  std::optional<Told> first;
  std::size_t entries = 0;
  std::size_t lit = 0;
  for (const JunctionArm& arm : arms) {
    if (!arm.can_enter()) continue;
    ++entries;
    const auto told = light_before(draft, roads, arm);
    if (!told) continue;
    ++lit;
    keep_first(first, *told);
  }
  return lit > 0 && 2 * lit >= entries ? first : std::nullopt;
}

std::optional<Told> lanes_on_ring(const Draft& draft, const road::Roads& roads, const Ring& ring) {
  std::optional<Told> told;
  for (const StretchId s : ring.stretches) {
    const auto lanes = car_lanes(draft, s);
    if (lanes && lanes->count >= 2) keep_first(told, {lanes->tag, way_object(roads.piece(s).way)});
  }
  return told;
}

std::optional<Told> lanes_on_entries(const Draft& draft, const road::Roads& roads,
                                     const std::vector<JunctionArm>& arms) {
  std::optional<Told> told;
  for (const JunctionArm& arm : arms) {
    for (const ArmPart& part : arm.parts) {
      if (!part.in || !part.is_public) continue;
      const auto lanes = car_lanes(draft, part.away.back());
      if (lanes && lanes->count >= 2)
        keep_first(told, {lanes->tag, way_object(roads.piece(part.away).way)});
    }
  }
  return told;
}

std::string junction_tag(const Draft& draft, const road::Roads& roads, const Ring& ring) {
  for (const StretchId s : ring.stretches) {
    if (roads.piece(s).way != ring.least_way) continue;
    return "junction=" + std::string(draft.way_tags(s.piece()).get("junction"));
  }
  return {};
}

}  // namespace

RingKind ring_kind(const Draft& draft, const road::Roads& roads, const Ring& ring,
                   const std::vector<JunctionArm>& arms) {
  if (const auto told = traversable_island(draft, roads, ring))
    return {Kind::mini_roundabout, told->tag, told->source};
  auto light = light_on_ring(draft, roads, ring);
  if (!light) light = lights_on_entries(draft, roads, arms);
  if (light) return {Kind::signal_roundabout, light->tag, light->source};
  auto lanes = lanes_on_ring(draft, roads, ring);
  if (!lanes) lanes = lanes_on_entries(draft, roads, arms);
  if (lanes) return {Kind::multi_lane_roundabout, lanes->tag, lanes->source};
  return {Kind::roundabout, junction_tag(draft, roads, ring), way_object(ring.least_way)};
}

}  // namespace loopwright::mark
