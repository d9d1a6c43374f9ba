// 1. traffic_signals:direction, stop:direction, give_way:direction or direction (the only key of an
//    advanced stop line) says forward, backward or both, along or against the way the node lies on.
//    It counts only where the road goes on and both its halves run the same way
//    (Key:traffic_signals:direction: valid only where the node lies on one way).
// 2. Without it: on a one-way road the sign faces the traffic; at a junction a light faces all, and
//    so does a pedestrian crossing's.
// 3. Else the road is walked both ways to the first junction, 60 m at most, and the sign faces the
//    drivers who have the nearer one before them (OSM wiki, Key:stop:direction). Where only service
//    roads join, yards and car parks, is no junction to put a sign up for (ours), unless there is
//    no other. When there is none either way, it faces both.
#include "facing.hpp"

#include <algorithm>
#include <optional>

#include "approach.hpp"
#include "loopwright/mark/rules.hpp"
#include "public_road.hpp"

namespace loopwright::mark {
namespace {

constexpr double junction_within_m = 60;

std::string_view direction_key(Sign sign) {
  switch (sign) {
    case Sign::light:
      return "traffic_signals:direction";
    case Sign::give_way:
      return "give_way:direction";
    case Sign::stop:
      return "stop:direction";
    case Sign::advanced_stop:
      break;
  }
  return "direction";
}

/// The other stretch that leaves a node where the road goes on.
StretchId onward(const road::Roads& roads, StretchId arriving) {
  const auto leaving = roads.leaving(roads.to_node(arriving));
  return leaving[0] == arriving.back() ? leaving[1] : leaving[0];
}

std::optional<bool> by_tag(const Tags& tags, Sign sign, StretchId arriving) {
  const std::string_view own = tags.get(direction_key(sign));
  const std::string_view value = own.empty() ? tags.get("direction") : own;
  if (value == "both") return true;
  if (value == "forward") return !arriving.against();
  if (value == "backward") return arriving.against();
  return std::nullopt;
}

bool is_service(const road::Roads& roads, StretchId s) {
  return roads.piece(s).road_class == road::RoadClass::service;
}

/// Where nothing but service roads joins ours: how it goes on. None elsewhere.
StretchId past_service_roads(const road::Roads& roads, StretchId arriving) {
  const StretchId next = straight_on(roads, arriving);
  if (!next.known() || is_service(roads, arriving) || is_service(roads, next)) return {};
  const bool others_join = std::ranges::any_of(
      roads.leaving(roads.to_node(arriving)),
      [&](StretchId s) { return s != next && s != arriving.back() && !is_service(roads, s); });
  return others_join ? StretchId{} : next;
}

/// What counts as a junction.
enum class Joins : std::uint8_t { streets, any_road };

/// Metres to the first junction ahead; empty when there is none near.
std::optional<double> junction_ahead_m(const road::Roads& roads, StretchId first, Joins joins) {
  double metres = 0;
  for (StretchId s = first; s.known();) {
    metres += roads.piece(s).length_m;
    if (metres > junction_within_m) return std::nullopt;
    if (road_ends(roads, roads.to_node(s)) < 3) {
      s = straight_on(roads, s);
    } else {
      s = joins == Joins::streets ? past_service_roads(roads, s) : StretchId{};
      if (!s.known()) return metres;
    }
    if (s == first) return std::nullopt;
  }
  return std::nullopt;
}

bool nearer_junction_ahead(const road::Roads& roads, StretchId arriving) {
  for (const Joins joins : {Joins::streets, Joins::any_road}) {
    const auto ahead = junction_ahead_m(roads, onward(roads, arriving), joins);
    const auto behind = junction_ahead_m(roads, arriving.back(), joins);
    if (ahead || behind) return ahead && (!behind || *ahead <= *behind);
  }
  return true;
}

}  // namespace

bool faces(const Draft& draft, const road::Roads& roads, StretchId arriving, Sign sign) {
  const NodeId node = roads.to_node(arriving);
  if (road_ends(roads, node) != 2) return sign == Sign::light;
  const StretchId on = onward(roads, arriving);
  if (on.against() == arriving.against()) {
    const auto told = by_tag(draft.node_tags(node), sign, arriving);
    if (told) return *told;
  }
  const bool crossing = (roads.nodes[node.index()].flags & road::node_flag::signal_crossing) != 0;
  if (sign == Sign::light && crossing) return true;
  if (!traffic_takes(draft, arriving.back())) return true;
  return nearer_junction_ahead(roads, arriving);
}

std::string light_tag(const Tags& tags) {
  if ((node_flags_of(tags) & road::node_flag::signals) != 0) return "highway=traffic_signals";
  for (const std::string_view key : {"crossing:signals", "crossing_ref", "crossing"}) {
    if (tags.has(key)) return std::string(key) + "=" + std::string(tags.get(key));
  }
  return {};
}

std::vector<Met> met_before(const road::Roads& roads, StretchId away_from_junction, double limit_m,
                            std::uint32_t flags) {
  std::vector<Met> met;
  for (const StretchId s : walk_on(roads, away_from_junction, limit_m)) {
    const NodeId node = roads.to_node(s);
    if (road_ends(roads, node) != 2) break;
    const bool wanted = (roads.nodes[node.index()].flags & flags) != 0;
    if (wanted) met.push_back({node, onward(roads, s).back()});
  }
  return met;
}

}  // namespace loopwright::mark
