// 1. A node with highway=mini_roundabout where roads meet is a mini-roundabout. Its arms are the
//    roads there in driving order, joined across splitter islands like those of a ring.
// 2. On a road's end it is no roundabout, and on a ring the ring counts: both are reported.
// 3. In the middle of a road (two arms) it is reported too, since the side road isn't mapped as road
//    or the node is misplaced, but one does drive round it: a chance ahead, whatever the bend, and
//    inferred.
// 4. direction=* that contradicts the side of the road is reported and not believed.
// 5. A chance for each legal way in and out. Driving back by the same arm isn't one: the graph has
//    no U-turns at nodes, and Highway Code rule 188 advises against them at a mini.
// 6. Two minis where roads join, at most 60 m of road apart and no other roundabout between, are a
//    double mini: each stays a place of its own (Highway Code rule 189: treat each separately), of
//    that special kind. 60 m is the trade's rule of thumb; service roads join no minis.
// Source: OSM wiki, page Tag:highway=mini_roundabout.
#include <algorithm>
#include <array>

#include "approach.hpp"
#include "arms.hpp"
#include "loopwright/mark/rules.hpp"
#include "passing.hpp"
#include "ring_movement.hpp"

namespace loopwright::mark {
namespace {

using road::Movement;

constexpr double double_within_m = 60;
constexpr std::string_view on_road_end = "mini-roundabout at a road's end";
constexpr std::string_view on_ring = "mini-roundabout on a roundabout's ring";
constexpr std::string_view on_plain_road = "mini-roundabout where no road joins";
constexpr std::string_view wrong_direction = "mini-roundabout is tagged the wrong way round";

bool contradicts(const Tags& tags, Side side) {
  return tags.is("direction", side == Side::left ? "anticlockwise" : "clockwise");
}

struct Mini {
  NodeId node;
  PlaceId place;
  std::vector<JunctionArm> arms;
  [[nodiscard]] bool on_plain_road() const { return arms.size() < 3; }
};

void add_chances(Draft& draft, const road::Roads& roads, const Mini& mini) {
  const auto& arms = mini.arms;
  const RingMovements movements(draft, roads, roads.nodes[mini.node.index()].at, arms);
  for (std::size_t from = 0; from < arms.size(); ++from) {
    for (std::size_t to = 0; to < arms.size(); ++to) {
      if (from == to || !arms[from].can_enter() || !arms[to].can_leave()) continue;
      const Path path = {arms[from].in(), arms[to].out()};
      if (!is_legal(roads, path)) continue;
      const bool plain = mini.on_plain_road();
      add_passing(draft, mini.place, path,
                  {.movement = plain ? Movement::ahead : movements.of(from, to),
                   .exit_number = exit_number(arms, from, to),
                   .confidence = plain ? road::Confidence::inferred : road::Confidence::certain,
                   .tag = "highway=mini_roundabout",
                   .source = node_object(roads, mini.node)});
    }
  }
}

/// What is wrong with it; empty when nothing is.
std::string_view trouble_of(const Draft& draft, const Mini& mini) {
  const bool ring = draft.place_at(mini.node, road::Kind::roundabout).known() ||
                    draft.place_at(mini.node, road::Kind::mini_roundabout).known();
  if (ring) return on_ring;
  if (mini.arms.size() < 2) return on_road_end;
  if (mini.on_plain_road()) return on_plain_road;
  return contradicts(draft.node_tags(mini.node), draft.side()) ? wrong_direction
                                                               : std::string_view();
}

/// What is a mini after all, its trouble reported.
std::vector<Mini> find_minis(Draft& draft, const road::Roads& roads) {
  std::vector<Mini> minis;
  for (std::size_t row = 0; row < roads.nodes.size(); ++row) {
    const NodeId node{row};
    if ((roads.nodes[row].flags & road::node_flag::mini_roundabout) == 0) continue;
    Mini mini{node, {}, arms_at(draft, roads, node)};
    const std::string_view trouble = trouble_of(draft, mini);
    if (!trouble.empty()) draft.report.odd(node_object(roads, node), trouble);
    if (trouble != on_ring && trouble != on_road_end) minis.push_back(std::move(mini));
  }
  return minis;
}

/// Rules: minis are ordered by node.
bool is_mini(const std::vector<Mini>& minis, NodeId node) {
  const auto at = std::ranges::lower_bound(minis, node, {}, &Mini::node);
  return at != minis.end() && at->node == node && !at->on_plain_road();
}

bool is_double(const road::Roads& roads, const std::vector<Mini>& minis, const Mini& mini) {
  if (mini.on_plain_road()) return false;
  const auto around = nodes_around(roads, mini.node, double_within_m);
  const auto joined = [&](const Reached& reached) {
    if (reached.node == mini.node || !is_mini(minis, reached.node)) return false;
    for (const Reached* at = &reached; at->by.known();) {
      if (roads.piece(at->by).road_class == road::RoadClass::service) return false;
      at = &*std::ranges::find(around, roads.from_node(at->by), &Reached::node);
    }
    return true;
  };
  return std::ranges::any_of(around, joined);
}

void mark_mini(Draft& draft, const road::Roads& roads, Mini& mini, road::Kind kind) {
  road::Place place;
  place.kind = kind;
  place.source = node_object(roads, mini.node);
  place.at = roads.nodes[mini.node.index()].at;
  place.name = draft.text(draft.node_tags(mini.node).get("name"));
  mini.place = draft.add_place(place, std::array{mini.node}, {});
  add_arm_rows(draft, roads, mini.place, mini.arms);
  add_chances(draft, roads, mini);
}

}  // namespace

void mark_minis(Draft& draft) {
  const road::Roads graph = draft.roads();
  std::vector<Mini> minis = find_minis(draft, graph);
  for (Mini& mini : minis) {
    const bool twin = is_double(graph, minis, mini);
    mark_mini(draft, graph, mini, twin ? road::Kind::double_mini : road::Kind::mini_roundabout);
  }
}

}  // namespace loopwright::mark
