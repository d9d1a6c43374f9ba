// 1. Lights are gathered into clusters (light_clusters.cpp). One with a junction is a signalled
//    junction; one without a junction but with a pedestrian crossing is a signal crossing; lights
//    on a road without either (works, a narrow bridge) are signals too, passed ahead.
// 2. A crossing that only service roads pass has no legal force and is left out.
// 3. A chance for each way through that passes a light facing it. The movement compares headings
//    outside the cluster; turning back through it (over 160 degrees) is no practice asked for.
// 4. The light named is the first one met.
// 5. Ways through a signalled junction may have a lane of their own for the turn, or lose a lane
//    behind it: places of their own (filter_lanes.cpp, lane_merges.cpp).
#include <algorithm>
#include <cmath>
#include <optional>

#include "approach.hpp"
#include "arms.hpp"
#include "facing.hpp"
#include "light_clusters.hpp"
#include "lit_ways.hpp"
#include "loopwright/mark/rules.hpp"
#include "passing.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;

Kind kind_of(const LightCluster& cluster) {
  return cluster.has_crossing && !cluster.has_junction ? Kind::signal_crossing : Kind::signals;
}

/// The first light on a path that holds those who drive it.
std::optional<NodeId> light_met(const Draft& draft, const road::Roads& roads,
                                const LightCluster& cluster, const Path& path) {
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    const NodeId node = roads.to_node(path[i]);
    if (!std::ranges::binary_search(cluster.lights, node)) continue;
    if (faces(draft, roads, path[i], Sign::light)) return node;
  }
  return std::nullopt;
}

std::uint16_t public_arms(const Draft& draft, const road::Roads& roads, const Spot& spot,
                          Point middle) {
  std::vector<std::pair<double, ArmPart>> parts;
  for (const NodeId node : spot.nodes) {
    for (const StretchId away : roads.leaving(node)) {
      if (spot.holds(away.piece())) continue;
      const double bearing = bearing_deg(middle, point_away(roads, away, 30));
      parts.emplace_back(draft.side() == Side::left ? bearing : -bearing, part_of(draft, away, 0));
    }
  }
  std::ranges::stable_sort(parts, {}, [](const auto& part) { return part.first; });
  std::vector<ArmPart> in_order;
  for (const auto& [bearing, part] : parts) in_order.push_back(part);
  const auto arms = join_parts(draft, roads, in_order);
  return static_cast<std::uint16_t>(std::ranges::count_if(arms, &JunctionArm::is_public));
}

/// The first light for vehicles, else the first crossing.
NodeId named_light(const road::Roads& roads, const LightCluster& cluster) {
  const auto light = std::ranges::find_if(cluster.lights, [&](NodeId node) {
    return (roads.nodes[node.index()].flags & road::node_flag::signals) != 0;
  });
  return light == cluster.lights.end() ? cluster.lights.front() : *light;
}

PlaceId add_cluster(Draft& draft, const road::Roads& roads, const LightCluster& cluster) {
  const NodeId light = named_light(roads, cluster);
  road::Place place;
  place.kind = kind_of(cluster);
  place.source = node_object(roads, light);
  place.at = middle_of(roads, cluster.spot.nodes);
  place.name = draft.text(draft.node_tags(light).get("name"));
  if (cluster.has_junction) place.arms = public_arms(draft, roads, cluster.spot, place.at);
  return draft.add_place(place, cluster.spot.nodes, cluster.spot.inside);
}

/// Adds the chance of a way that a light holds; false when none does, or it turns back.
bool add_chance(Draft& draft, const road::Roads& roads, const LightCluster& cluster, PlaceId place,
                const LitWay& way) {
  const auto light = light_met(draft, roads, cluster, way.path);
  if (!light || way.movement == road::Movement::round) return false;
  const std::string tag = light_tag(draft.node_tags(*light));
  add_passing(draft, place, way.path,
              {.movement = way.movement, .tag = tag, .source = node_object(roads, *light)});
  return true;
}

/// Movements compare headings outside the cluster; turning back through it is "round".
LitWay lit_way(const road::Roads& roads, const LightCluster& cluster, const Path& path) {
  if (kind_of(cluster) == Kind::signal_crossing) return {path, road::Movement::none};
  return {path, movement_of(heading_change_deg(road::bearing_in_deg(roads, path.front()),
                                               road::bearing_out_deg(roads, path.back())))};
}

void mark_cluster(Draft& draft, const road::Roads& roads, const LightCluster& cluster) {
  std::vector<Path> ways = ways_through(roads, cluster.spot);
  if (kind_of(cluster) == Kind::signal_crossing) {
    std::erase_if(ways, [&](const Path& path) { return on_service_road(roads, path); });
    if (!is_on_road(roads, cluster.spot)) {
      draft.report.count("crossings on service roads, without legal force");
      return;
    }
  }
  const PlaceId place = add_cluster(draft, roads, cluster);
  std::vector<LitWay> lit;
  for (const Path& path : ways) {
    LitWay way = lit_way(roads, cluster, path);
    if (add_chance(draft, roads, cluster, place, way)) lit.push_back(std::move(way));
  }
  mark_filter_lanes(draft, roads, cluster.spot, lit);
  mark_merges_behind_lights(draft, roads, cluster.spot, lit);
}

}  // namespace

void mark_signals(Draft& draft) {
  const road::Roads graph = draft.roads();
  for (const LightCluster& cluster : find_light_clusters(draft, graph)) {
    mark_cluster(draft, graph, cluster);
  }
}

}  // namespace loopwright::mark
