// 1. Each node with the zebra bit (node_kinds.cpp) on a road is a place; a zebra that only service
//    roads pass has no legal force and is left out (car parks' stripes; Highway Code rule 195 is about
//    roads).
// 2. A chance for each way over it, in both directions. One that is only "marked" is inferred.
// Crossings with lights are marked with the signals.
#include <array>
#include <string>

#include "loopwright/mark/rules.hpp"
#include "passing.hpp"

namespace loopwright::mark {
namespace {

/// The tag that makes a node a zebra.
std::string zebra_tag(const Tags& tags) {
  for (const std::string_view key : {"crossing_ref", "crossing:markings", "crossing"}) {
    const std::string_view value = tags.get(key);
    if (value.find("zebra") != std::string_view::npos)
      return std::string(key) + "=" + std::string(value);
  }
  return "crossing=" + std::string(tags.get("crossing"));
}

void mark_zebra(Draft& draft, const road::Roads& roads, NodeId node) {
  const Spot spot{{node}, {}};
  if (!is_on_road(roads, spot)) {
    draft.report.count("crossings on service roads, without legal force");
    return;
  }
  const Tags& tags = draft.node_tags(node);
  road::Place place;
  place.kind = road::Kind::zebra;
  place.source = node_object(roads, node);
  place.at = roads.nodes[node.index()].at;
  place.name = draft.text(tags.get("name"));
  const PlaceId id = draft.add_place(place, spot.nodes, spot.inside);
  const std::string tag = zebra_tag(tags);
  for (const Path& path : ways_through(roads, spot)) {
    if (on_service_road(roads, path)) continue;
    add_passing(draft, id, path,
                {.confidence = zebra_is_certain(tags) ? road::Confidence::certain
                                                      : road::Confidence::inferred,
                 .tag = tag,
                 .source = place.source});
  }
}

}  // namespace

void mark_crossings(Draft& draft) {
  const road::Roads graph = draft.roads();
  for (std::size_t row = 0; row < graph.nodes.size(); ++row) {
    if ((graph.nodes[row].flags & road::node_flag::zebra) != 0)
      mark_zebra(draft, graph, NodeId{row});
  }
}

}  // namespace loopwright::mark
