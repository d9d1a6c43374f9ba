// 1. Every node where public roads meet, and that is no roundabout, mini or signalled junction, is
//    looked at. Arms are counted as a driver does (arms.cpp); where four meet on a dual carriageway
//    the gap through the reservation is left out, so that a T-junction there stays one.
// 2. Three arms, one of which gives way (priority.cpp): coming out of it is emerging, going into it
//    from the others is turning off. Each turn by its angle, left or right; ahead is neither.
// 3. Four arms: a crossroads, in every legal movement. Certain when its signs are mapped.
// Emerging and turning off are two places at one node, so that each is counted by itself.
#include <algorithm>
#include <array>
#include <cmath>

#include "approach.hpp"
#include "arms.hpp"
#include "loopwright/mark/rules.hpp"
#include "passing.hpp"
#include "priority.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::Movement;

constexpr std::uint32_t dual = road::piece_flag::dual | road::piece_flag::dual_inferred;
constexpr double gap_within_m = 40;  // wider than any reservation with a gap in it; ours

struct Junction {
  NodeId node;
  std::vector<JunctionArm> arms;
  std::vector<ArmRule> rules;
};

bool touches_dual(const road::Roads& roads, NodeId node) {
  return std::ranges::any_of(roads.leaving(node),
                             [&](StretchId s) { return (roads.piece(s).flags & dual) != 0; });
}

/// The short link between the two sides of a dual carriageway.
bool is_gap(const road::Roads& roads, const JunctionArm& arm) {
  const StretchId away = arm.parts.front().away;
  const road::Piece& piece = roads.piece(away);
  return (piece.flags & dual) == 0 && piece.length_m <= gap_within_m &&
         touches_dual(roads, roads.from_node(away)) && touches_dual(roads, roads.to_node(away));
}

Junction junction_at(const Draft& draft, const road::Roads& roads, NodeId node) {
  Junction junction{node, arms_at(draft, roads, node), {}};
  std::erase_if(junction.arms, [](const JunctionArm& arm) { return !arm.is_public(); });
  if (junction.arms.size() == 4) {
    std::erase_if(junction.arms, [&](const JunctionArm& arm) { return is_gap(roads, arm); });
  }
  junction.rules = priorities(draft, roads, node, junction.arms);
  return junction;
}

PlaceId add_junction_place(Draft& draft, const road::Roads& roads, const Junction& junction,
                           Kind kind) {
  road::Place place;
  place.kind = kind;
  place.source = node_object(roads, junction.node);
  place.at = roads.nodes[junction.node.index()].at;
  place.name = draft.text({});
  place.arms = static_cast<std::uint16_t>(junction.arms.size());
  return draft.add_place(place, std::array{junction.node}, {});
}

/// Every legal turn from one arm to another.
std::vector<Path> turns_between(const road::Roads& roads, const JunctionArm& from,
                                const JunctionArm& to) {
  std::vector<Path> turns;
  for (const ArmPart& in : from.parts) {
    for (const ArmPart& out : to.parts) {
      Path path = {in.away.back(), out.away};
      if (is_legal(roads, path)) turns.push_back(std::move(path));
    }
  }
  return turns;
}

Movement movement_on(const road::Roads& roads, const Path& path) {
  const road::Turn* turn = turn_into(roads, StateId{path.front().index()}, path.back());
  return turn_movement(turn->angle_deg);
}

/// Chances of one kind at a T-junction: out of the minor arm, or into it.
void add_tee(Draft& draft, const road::Roads& roads, const Junction& junction, Kind kind) {
  const std::size_t minor = *only_minor(junction.rules);
  const ArmRule& rule = junction.rules[minor];
  std::vector<Path> paths;
  for (std::size_t other = 0; other < junction.arms.size(); ++other) {
    if (other == minor) continue;
    const JunctionArm& from = junction.arms[kind == Kind::emerge ? minor : other];
    const JunctionArm& to = junction.arms[kind == Kind::emerge ? other : minor];
    for (Path& path : turns_between(roads, from, to)) {
      if (movement_on(roads, path) != Movement::ahead) paths.push_back(std::move(path));
    }
  }
  if (paths.empty()) return;
  const PlaceId place = add_junction_place(draft, roads, junction, kind);
  for (const Path& path : paths) {
    add_passing(draft, place, path,
                {.movement = movement_on(roads, path),
                 .confidence = rule.confidence,
                 .tag = rule.tag,
                 .source = rule.source});
  }
}

/// A sign that settles the priorities, else that four roads meet.
ArmRule reason_for_crossroads(const road::Roads& roads, const Junction& junction) {
  for (const ArmRule& rule : junction.rules) {
    if (rule.yields() && rule.confidence == road::Confidence::certain) return rule;
  }
  return {Yield::unknown, road::Confidence::inferred, "four roads meet",
          node_object(roads, junction.node)};
}

void add_crossroads(Draft& draft, const road::Roads& roads, const Junction& junction) {
  const ArmRule reason = reason_for_crossroads(roads, junction);
  const PlaceId place = add_junction_place(draft, roads, junction, Kind::crossroads);
  for (const JunctionArm& from : junction.arms) {
    for (const JunctionArm& to : junction.arms) {
      if (&from == &to) continue;
      for (const Path& path : turns_between(roads, from, to)) {
        add_passing(draft, place, path,
                    {.movement = movement_on(roads, path),
                     .confidence = reason.confidence,
                     .tag = reason.tag,
                     .source = reason.source});
      }
    }
  }
}

}  // namespace

void mark_junctions(Draft& draft) {
  const road::Roads graph = draft.roads();
  for (std::size_t row = 0; row < graph.nodes.size(); ++row) {
    const NodeId node{row};
    if (road_ends(graph, node) < 3 || draft.is_controlled(node)) continue;
    const Junction junction = junction_at(draft, graph, node);
    if (junction.arms.size() == 3 && only_minor(junction.rules)) {
      add_tee(draft, graph, junction, Kind::emerge);
      add_tee(draft, graph, junction, Kind::turn_off);
    } else if (junction.arms.size() == 4) {
      add_crossroads(draft, graph, junction);
    }
  }
}

}  // namespace loopwright::mark
