// 1. A node cycleway=asl is the box for cyclists before the stop line of lights. Its direction says
//    who meets it; on a one-way road all do, else those who have the nearer junction before them.
// 2. Lights must be near: a signalled junction, crossing or roundabout within 60 m (ours) of it by
//    road. Boxes are painted nowhere else, so without lights the map lacks one of the two; those are
//    left out and reported.
// 3. On the junction itself nobody knows which way in it is on (the wiki warns of it): reported.
// Source: OSM wiki, page Tag:cycleway=asl; Highway Code rule 178.
#include <algorithm>

#include "approach.hpp"
#include "facing.hpp"
#include "junction_kinds.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;

constexpr double lights_within_m = 60;

bool has_lights(const Draft& draft, NodeId node) {
  return draft.place_at(node, Kind::signals).known() ||
         draft.place_at(node, Kind::signal_crossing).known() ||
         draft.place_at(node, Kind::signal_roundabout).known();
}

bool lights_near(const Draft& draft, const road::Roads& roads, NodeId node) {
  const auto around = nodes_around(roads, node, lights_within_m);
  return std::ranges::any_of(around, [&](const Reached& r) { return has_lights(draft, r.node); });
}

void mark_box(Draft& draft, const road::Roads& roads, NodeId node) {
  const OsmObject source = node_object(roads, node);
  if (road_ends(roads, node) != 2) {
    draft.report.odd(source, "advanced stop line on a junction or a road's end");
    return;
  }
  if (!lights_near(draft, roads, node)) {
    draft.report.odd(source, "advanced stop line without lights near");
    return;
  }
  std::vector<Path> ways = ways_through(roads, {{node}, {}});
  std::erase_if(ways, [&](const Path& path) {
    return !faces(draft, roads, path.front(), Sign::advanced_stop);
  });
  if (ways.empty()) return;
  const PlaceId place = add_node_place(draft, roads, node, Kind::advanced_stop_line);
  for (const Path& path : ways)
    add_passing(draft, place, path, {.tag = "cycleway=asl", .source = source});
}

}  // namespace

void mark_advanced_stop_lines(Draft& draft) {
  const road::Roads graph = draft.roads();
  for (std::size_t row = 0; row < graph.nodes.size(); ++row) {
    if ((graph.nodes[row].flags & road::node_flag::advanced_stop) != 0)
      mark_box(draft, graph, NodeId{row});
  }
}

}  // namespace loopwright::mark
