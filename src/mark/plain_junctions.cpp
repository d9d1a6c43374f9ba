// 1. Every node where public roads meet, and that is no roundabout, mini or signalled junction.
//    Arms are counted as a driver does (arms.cpp); where four meet on a dual carriageway the gap
//    through the reservation is left out, so that a T-junction there stays one.
// 2. A turn at a T-junction is left or right by its angle. Where it is nearly straight on (within 45
//    degrees: the minor arm of a Y, or a main road that bends) it is left or right by the side of
//    the third arm on which it lies, as a driver sees it.
// 3. A slip road, or a one-way road that joins or leaves a one-way road, runs in nearly straight
//    without any such turn: that is merging, another kind.
#include "plain_junctions.hpp"

#include <algorithm>
#include <array>

#include "approach.hpp"
#include "loopwright/base/in_parts.hpp"

namespace loopwright::mark {
namespace {

using road::Movement;

constexpr std::uint32_t dual = road::piece_flag::dual | road::piece_flag::dual_inferred;
constexpr double gap_within_m = 40;  // wider than any reservation with a gap in it; ours

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

PlainJunction junction_at(const Draft& draft, const road::Roads& roads, NodeId node) {
  PlainJunction junction{node, arms_at(draft, roads, node), {}};
  std::erase_if(junction.arms, [](const JunctionArm& arm) { return !arm.is_public(); });
  if (junction.arms.size() == 4) {
    std::erase_if(junction.arms, [&](const JunctionArm& arm) { return is_gap(roads, arm); });
  }
  junction.rules = priorities(draft, roads, node, junction.arms);
  return junction;
}

bool is_one_way(const road::Roads& roads, StretchId stretch) {
  return (roads.piece(stretch).flags & road::piece_flag::one_way) != 0;
}

/// True when the turn joins or leaves a stream of traffic rather than crossing into a road.
bool merges(const road::Roads& roads, const Path& path, StretchId minor) {
  if (road::name(roads.piece(minor).road_class).ends_with("_link")) return true;
  return is_one_way(roads, path.front()) && is_one_way(roads, path.back());
}

/// Left or right at a T-junction, by the third arm where the turn is nearly straight on.
Movement tee_movement(const road::Roads& roads, const Path& path, const JunctionArm& third) {
  const double taken = turn_deg(roads, path);
  const Movement by_angle = turn_movement(taken);
  if (by_angle != Movement::ahead) return by_angle;
  const double other = heading_change_deg(road::bearing_in_deg(roads, path.front()),
                                          road::bearing_out_deg(roads, third.parts.front().away));
  return taken < other ? Movement::left : Movement::right;
}

void add_turns(const road::Roads& roads, const PlainJunction& junction, TeeTurn turn,
               std::vector<TeeTurn>& turns) {
  const std::size_t minor = *junction.minor();
  const JunctionArm& third = junction.arms[3 - turn.from - turn.to];
  const StretchId minor_road = junction.arms[minor].parts.front().away;
  for (Path& path : turns_between(roads, junction.arms[turn.from], junction.arms[turn.to])) {
    const bool ahead = turn_movement(turn_deg(roads, path)) == Movement::ahead;
    if (ahead && merges(roads, path, minor_road)) continue;
    turn.movement = tee_movement(roads, path, third);
    turn.path = std::move(path);
    turns.push_back(turn);
  }
}

}  // namespace

std::optional<std::size_t> PlainJunction::minor() const {
  return arms.size() == 3 ? only_minor(rules) : std::nullopt;
}

std::vector<PlainJunction> plain_junctions(const Draft& draft, const road::Roads& roads) {
  std::vector<PlainJunction> junctions;
  const auto at = [&](std::size_t row) {
    const NodeId node{row};
    const bool plain = road_ends(roads, node) >= 3 && !draft.is_controlled(node);
    return plain ? junction_at(draft, roads, node) : PlainJunction{};
  };
  each_in_order(roads.nodes.size(), at, [&](std::size_t, PlainJunction&& junction) {
    if (junction.arms.size() >= 3) junctions.push_back(std::move(junction));
  });
  return junctions;
}

std::vector<TeeTurn> turns_out_of(const road::Roads& roads, const PlainJunction& junction) {
  const std::size_t minor = *junction.minor();
  std::vector<TeeTurn> turns;
  for (std::size_t other = 0; other < 3; ++other) {
    if (other != minor) add_turns(roads, junction, {{}, minor, other}, turns);
  }
  return turns;
}

std::vector<TeeTurn> turns_into(const road::Roads& roads, const PlainJunction& junction) {
  const std::size_t minor = *junction.minor();
  std::vector<TeeTurn> turns;
  for (std::size_t other = 0; other < 3; ++other) {
    if (other != minor) add_turns(roads, junction, {{}, other, minor}, turns);
  }
  return turns;
}

std::vector<Path> turns_between(const road::Roads& roads, const JunctionArm& from,
                                const JunctionArm& to) {
  std::vector<Path> turns;
  for (const ArmPart& in : from.parts) {
    for (const ArmPart& out : to.parts) {
      if (in.away.piece() == out.away.piece()) continue;  // a loop, driven round again
      Path path = {in.away.back(), out.away};
      if (is_legal(roads, path)) turns.push_back(std::move(path));
    }
  }
  return turns;
}

double turn_deg(const road::Roads& roads, const Path& path) {
  return turn_into(roads, StateId{path.front().index()}, path.back())->angle_deg;
}

PlaceId add_node_place(Draft& draft, const road::Roads& roads, NodeId node, road::Kind kind) {
  road::Place place;
  place.kind = kind;
  place.source = node_object(roads, node);
  place.at = roads.nodes[node.index()].at;
  place.name = draft.text({});
  return draft.add_place(place, std::array{node}, {});
}

PlaceId add_junction_place(Draft& draft, const road::Roads& roads, const PlainJunction& junction,
                           road::Kind kind) {
  const PlaceId id = add_node_place(draft, roads, junction.node, kind);
  draft.tables.places[id.index()].arms = static_cast<std::uint16_t>(junction.arms.size());
  return id;
}

}  // namespace loopwright::mark
