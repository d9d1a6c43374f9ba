// 1. A node with highway=mini_roundabout where roads meet is a mini-roundabout. Its arms are the
//    roads there in driving order, joined across splitter islands like those of a ring.
// 2. On a road's end it is no roundabout, and on a ring the ring counts: both are reported.
// 3. In the middle of a road (two arms) it is reported too, since the side road isn't mapped as road
//    or the node is misplaced, but one does drive round it: a chance ahead, whatever the bend, and
//    inferred.
// 4. direction=* that contradicts the side of the road is reported and not believed.
// 5. A chance for each legal way in and out. Driving back by the same arm isn't one: the graph has
//    no U-turns at nodes, and Highway Code rule 188 advises against them at a mini.
// Source: OSM wiki, page Tag:highway=mini_roundabout.
#include <array>
#include <cmath>

#include "arms.hpp"
#include "loopwright/mark/rules.hpp"
#include "passing.hpp"

namespace loopwright::mark {
namespace {

using road::Movement;

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

/// A hairpin to the next arm is a near-side turn, to the last one a far-side turn.
Movement movement_between(const road::Roads& roads, const JunctionArm& from,
                          const JunctionArm& to) {
  constexpr double plain_deg = 135;
  const double in = bearing_of_arm(roads, from.in().back());
  const double out = bearing_of_arm(roads, to.out());
  const double change = heading_change_deg(in + 180, out);
  if (std::abs(change) <= plain_deg) return turn_movement(change);
  return std::fmod(out - in + 720, 360) > 180 ? Movement::right : Movement::left;
}

void add_chances(Draft& draft, const road::Roads& roads, const Mini& mini) {
  const auto& arms = mini.arms;
  for (std::size_t from = 0; from < arms.size(); ++from) {
    for (std::size_t to = 0; to < arms.size(); ++to) {
      if (from == to || !arms[from].can_enter() || !arms[to].can_leave()) continue;
      const Path path = {arms[from].in(), arms[to].out()};
      if (!is_legal(roads, path)) continue;
      const bool plain = mini.on_plain_road();
      add_passing(
          draft, mini.place, path,
          {.movement = plain ? Movement::ahead : movement_between(roads, arms[from], arms[to]),
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

void mark_mini(Draft& draft, const road::Roads& roads, NodeId node) {
  const OsmObject object = node_object(roads, node);
  Mini mini{node, {}, arms_at(draft, roads, node)};
  const std::string_view trouble = trouble_of(draft, mini);
  if (!trouble.empty()) draft.report.odd(object, trouble);
  if (trouble == on_ring || trouble == on_road_end) return;
  road::Place place;
  place.kind = road::Kind::mini_roundabout;
  place.source = object;
  place.at = roads.nodes[node.index()].at;
  place.name = draft.text(draft.node_tags(node).get("name"));
  mini.place = draft.add_place(place, std::array{node}, {});
  add_arm_rows(draft, roads, mini.place, mini.arms);
  add_chances(draft, roads, mini);
}

}  // namespace

void mark_minis(Draft& draft) {
  const road::Roads graph = draft.roads();
  for (std::size_t row = 0; row < graph.nodes.size(); ++row) {
    if ((graph.nodes[row].flags & road::node_flag::mini_roundabout) != 0) {
      mark_mini(draft, graph, NodeId{row});
    }
  }
}

}  // namespace loopwright::mark
