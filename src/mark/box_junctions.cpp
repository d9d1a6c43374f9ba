// 1. No tag for a box of yellow lines is settled; the three in use are taken on nodes and on ways
//    (tag_words.hpp). A node is one place; the pieces of one way, with their nodes, are another.
// 2. A chance for each legal way over it: left, ahead or right. On a road without a junction (before
//    a fire station) it is ahead, whatever the bend; turning back through it is none.
// Source: Highway Code rule 174; few boxes are mapped, so that none is mapped says nothing.
#include <algorithm>
#include <cmath>
#include <map>

#include "approach.hpp"
#include "junction_kinds.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::Movement;

constexpr double turns_back_deg = 160;

struct Box {
  Spot spot;
  std::string tag;
  OsmObject source;
};

bool has_junction(const road::Roads& roads, const Spot& spot) {
  return std::ranges::any_of(spot.nodes, [&](NodeId n) { return road_ends(roads, n) >= 3; });
}

void add_box(Draft& draft, const road::Roads& roads, const Box& box) {
  const std::vector<Path> ways = ways_through(roads, box.spot);
  if (ways.empty()) return;
  road::Place place;
  place.kind = Kind::box_junction;
  place.source = box.source;
  place.at = middle_of(roads, box.spot.nodes);
  place.name = draft.text({});
  const PlaceId id = draft.add_place(place, box.spot.nodes, box.spot.inside);
  for (const Path& path : ways) {
    const double change = heading_change_deg(road::bearing_in_deg(roads, path.front()),
                                             road::bearing_out_deg(roads, path.back()));
    if (std::abs(change) > turns_back_deg) continue;
    const Movement movement = has_junction(roads, box.spot) ? movement_of(change) : Movement::ahead;
    add_passing(draft, id, path, {.movement = movement, .tag = box.tag, .source = box.source});
  }
}

std::vector<Box> boxes_on_ways(const Draft& draft, const road::Roads& roads) {
  std::map<std::int64_t, Box> by_way;
  for (std::size_t row = 0; row < roads.pieces.size(); ++row) {
    const PieceId piece{row};
    const std::string tag = box_junction_tag(draft.way_tags(piece));
    if (tag.empty()) continue;
    Box& box = by_way[roads.pieces[row].way];
    box.tag = tag, box.source = way_object(roads.pieces[row].way);
    box.spot.inside.push_back(piece);
    box.spot.nodes.insert(box.spot.nodes.end(), {roads.pieces[row].a, roads.pieces[row].b});
  }
  std::vector<Box> boxes;
  for (auto& [way, box] : by_way) {
    box.spot.tidy();
    boxes.push_back(std::move(box));
  }
  return boxes;
}

}  // namespace

void mark_box_junctions(Draft& draft) {
  const road::Roads graph = draft.roads();
  for (std::size_t row = 0; row < graph.nodes.size(); ++row) {
    if ((graph.nodes[row].flags & road::node_flag::box_junction) == 0) continue;
    const NodeId node{row};
    add_box(draft, graph,
            {{{node}, {}}, box_junction_tag(draft.node_tags(node)), node_object(graph, node)});
  }
  for (const Box& box : boxes_on_ways(draft, graph)) add_box(draft, graph, box);
}

}  // namespace loopwright::mark
