// 1. A ford is a node or a way with ford=* but "no"; all that hang together are one place.
// 2. A chance for each way through it. In an area built without fords nothing can be driven there
//    (access.cpp, barriers.cpp), so its fords are places without chances.
// Source: OSM wiki, page Key:ford.
#include <string>

#include "loopwright/mark/rules.hpp"
#include "series.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

void add_ford(Draft& draft, const road::Roads& roads, const ThingRule& rule, const Spot& spot) {
  road::Place place;
  place.kind = road::Kind::ford;
  place.source = spot.inside.empty() ? node_object(roads, spot.nodes.front())
                                     : way_object(roads.pieces[spot.inside.front().index()].way);
  place.at = middle_of(roads, spot.nodes);
  const PlaceId id = draft.add_place(place, spot.nodes, spot.inside);
  for (const Path& path : ways_through(roads, spot)) {
    const auto met = things_met(roads, rule, path);
    if (met.empty()) continue;
    const bool at_node = met.front().node.known();
    const Tags& tags =
        at_node ? draft.node_tags(met.front().node) : draft.way_tags(met.front().on.piece());
    const OsmObject source = at_node ? node_object(roads, met.front().node)
                                     : way_object(roads.piece(met.front().on).way);
    add_passing(draft, id, path, {.tag = tag_text(tags, "ford"), .source = source});
  }
}

}  // namespace

void mark_fords(Draft& draft) {
  const road::Roads roads = draft.roads();
  const ThingRule rule{road::node_flag::ford,
                       [&](PieceId piece) { return has_ford(draft.way_tags(piece)); }};
  for (const Spot& spot : series_of(roads, things_on_road(roads, rule), {})) {
    add_ford(draft, roads, rule, spot);
  }
}

}  // namespace loopwright::mark
