// Ways through a place: from each entry a depth-first walk over the legal turns, which stays on
// inside pieces and comes to no node twice; where it leaves the place an exit is found. Places are
// small, so every way is looked at and the shortest kept.
#include "passing.hpp"
#include "loopwright/base/point_between.hpp"
#include "loopwright/road/kind_table.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace loopwright::mark {
namespace {

template <class Id>
void order(std::vector<Id>& ids) {
  std::ranges::sort(ids);
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
}

double length_of(const road::Roads& roads, const Path& path) {
  double metres = 0;
  for (const StretchId s : path) metres += roads.piece(s).length_m;
  return metres;
}

class Finder {
 public:
  Finder(const road::Roads& roads, const Spot& spot) : roads_(roads), spot_(spot) {}

  std::map<StretchId, Path> from(StretchId entry) {
    path_ = {entry};
    visited_ = {roads_.to_node(entry)};
    best_.clear();
    follow(StateId{entry.index()});
    return std::move(best_);
  }

 private:
  void follow(StateId state) {
    for (const road::Turn& turn : roads_.turns_from(state)) {
      const StretchId next = roads_.stretch_of(turn.to);
      if (!roads_.drivable(next)) continue;
      spot_.holds(next.piece()) ? go_on(turn.to, next) : leave(next);
    }
  }

  void go_on(StateId state, StretchId next) {
    const NodeId node = roads_.to_node(next);
    if (std::ranges::find(visited_, node) != visited_.end()) return;
    path_.push_back(next);
    visited_.push_back(node);
    follow(state);
    visited_.pop_back();
    path_.pop_back();
  }

  void leave(StretchId exit) {
    if (exit == path_.front().back()) return;
    Path whole = path_;
    whole.push_back(exit);
    const auto [at, is_new] = best_.try_emplace(exit, whole);
    if (!is_new && length_of(roads_, whole) < length_of(roads_, at->second)) at->second = whole;
  }

  const road::Roads& roads_;
  const Spot& spot_;
  Path path_;
  std::vector<NodeId> visited_;
  std::map<StretchId, Path> best_;
};

std::vector<StretchId> entries_of(const road::Roads& roads, const Spot& spot) {
  std::vector<StretchId> entries;
  for (const NodeId node : spot.nodes) {
    for (const StretchId away : roads.leaving(node)) {
      if (roads.drivable(away.back()) && !spot.holds(away.piece())) entries.push_back(away.back());
    }
  }
  order(entries);
  return entries;
}

}  // namespace

void Spot::tidy() {
  order(nodes);
  order(inside);
}

void Spot::take(const Spot& other) {
  nodes.insert(nodes.end(), other.nodes.begin(), other.nodes.end());
  inside.insert(inside.end(), other.inside.begin(), other.inside.end());
  tidy();
}

bool Spot::holds(NodeId node) const {
  return std::ranges::binary_search(nodes, node);
}

bool Spot::holds(PieceId piece) const {
  return std::ranges::binary_search(inside, piece);
}

const road::Turn* turn_into(const road::Roads& roads, StateId from, StretchId to) {
  for (const road::Turn& turn : roads.turns_from(from)) {
    if (roads.stretch_of(turn.to) == to) return &turn;
  }
  return nullptr;
}

bool is_legal(const road::Roads& roads, std::span<const StretchId> path) {
  if (!std::ranges::all_of(path, [&](StretchId s) { return roads.drivable(s); })) return false;
  StateId state{path.front().index()};
  for (const StretchId next : path.subspan(1)) {
    const road::Turn* turn = turn_into(roads, state, next);
    if (turn == nullptr) return false;
    state = turn->to;
  }
  return true;
}

std::vector<Path> ways_through(const road::Roads& roads, const Spot& spot) {
  std::vector<Path> ways;
  Finder finder(roads, spot);
  for (const StretchId entry : entries_of(roads, spot)) {
    for (auto& [exit, path] : finder.from(entry)) ways.push_back(std::move(path));
  }
  return ways;
}

bool is_on_road(const road::Roads& roads, const Spot& spot) {
  std::size_t ends = 0;
  for (const NodeId node : spot.nodes) {
    for (const StretchId away : roads.leaving(node)) {
      if (roads.piece(away).road_class != road::RoadClass::service) ++ends;
    }
  }
  return ends >= 2;
}

bool on_service_road(const road::Roads& roads, std::span<const StretchId> path) {
  return std::ranges::any_of(
      path, [&](StretchId s) { return roads.piece(s).road_class == road::RoadClass::service; });
}

void add_passing(Draft& draft, PlaceId place, const Path& path, const Claim& claim) {
  const road::Kind kind = claim.kind.value_or(draft.tables.places[place.index()].kind);
  road::Chance chance;
  chance.place = place;
  chance.entry = path.front();
  chance.exit = path.back();
  chance.kind = kind;
  chance.movement = claim.movement;
  chance.exit_number = static_cast<std::uint8_t>(claim.exit_number);
  chance.hardness = static_cast<std::uint8_t>(
      road::hardness_of(kind, as_on_the_left(claim.movement, draft.side())));
  chance.confidence = claim.confidence;
  chance.tag = draft.text(claim.tag);
  chance.source = claim.source;
  draft.add_chance(chance, path);
}

OsmObject node_object(const road::Roads& roads, NodeId node) {
  return {roads.nodes[node.index()].osm_id, ObjectType::node, {}};
}

OsmObject way_object(std::int64_t id) {
  return {id, ObjectType::way, {}};
}

Point middle_of(const road::Roads& roads, std::span<const NodeId> nodes) {
  std::int64_t lat = 0;
  std::int64_t lon = 0;
  for (const NodeId node : nodes) {
    lat += roads.nodes[node.index()].at.lat_e7;
    lon += lon_beside_e7(roads.nodes[node.index()].at, roads.nodes[nodes.front().index()].at);
  }
  const auto count = static_cast<std::int64_t>(nodes.size());
  return point_of_turn(lat / count, lon / count);
}

road::Movement as_on_the_left(road::Movement movement, Side side) {
  if (side == Side::left) return movement;
  if (movement == road::Movement::left) return road::Movement::right;
  return movement == road::Movement::right ? road::Movement::left : movement;
}

road::Movement turn_movement(double heading_change_deg) {
  constexpr double sharpest_deg = 159;  // movement_of calls more than 160 degrees "round"
  return movement_of(std::clamp(heading_change_deg, -sharpest_deg, sharpest_deg));
}

}  // namespace loopwright::mark
