// 1. A light on a junction holds it. One beside the road holds the first junction within 40 m of
//    it in the direction it faces. When that is a roundabout or mini the light belongs to it, and
//    when a level crossing comes first the light belongs to that.
// 2. A junction counts as signalled when a light stands on it, or lights hold at least half of the
//    roads into it. Otherwise they are lights by themselves that happen to stand near a junction (a
//    crossing, a bridge). Lights mapped as pedestrian_crossing never make a junction.
// 3. Signalled junctions, and lights by themselves, within 40 m of each other by road are one
//    cluster (40 m is ours), with the pieces of the way between them.
// 4. A light joins the junction it holds, and a lit crossing what it is within 40 m of, where no
//    other junction lies between. A crossing that joins nothing is a cluster by itself.
// 5. A piece of at most 40 m between two nodes of a cluster lies inside it.
#include "light_clusters.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "approach.hpp"
#include "arms.hpp"
#include "facing.hpp"
#include "public_road.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::node_flag;

constexpr double joined_within_m = 40;
constexpr std::string_view of_others = "lights of roundabouts, minis and level crossings";

/// A way along the road from one node to another, to be inside a cluster.
struct Link {
  NodeId from, to;
  std::vector<StretchId> walk;
};

class Clusters {
 public:
  Clusters(Draft& draft, const road::Roads& roads) : draft_(draft), roads_(roads) {}

  std::vector<LightCluster> find();

 private:
  [[nodiscard]] std::uint32_t flags(NodeId node) const { return roads_.nodes[node.index()].flags; }
  /// Where a road parts into its two one-way halves, only two arms meet.
  [[nodiscard]] bool is_junction(NodeId node) const {
    return road_ends(roads_, node) >= 3 && arms_at(draft_, roads_, node).size() >= 3;
  }
  [[nodiscard]] bool has_own_place(NodeId node) const {
    return draft_.place_at(node, road::Kind::roundabout).known() ||
           draft_.place_at(node, road::Kind::mini_roundabout).known();
  }
  [[nodiscard]] bool meets_train(const std::vector<StretchId>& walk) const;

  void sort_out(NodeId light);
  void look_ahead(NodeId light);
  void decide_junctions();
  [[nodiscard]] bool is_signalled(NodeId junction, const std::vector<Link>& lights) const;
  void link_anchors();
  void link_crossing(NodeId crossing);
  std::vector<LightCluster> gather();
  std::size_t root(NodeId node);
  void join(const Link& link);
  void add_walk(LightCluster& cluster, const Link& link) const;
  void add_short_pieces(LightCluster& cluster) const;

  Draft& draft_;
  const road::Roads& roads_;
  std::map<NodeId, std::vector<Link>> held_;  // junctions beside which lights stand
  std::set<NodeId> junctions_;                // signalled
  std::set<NodeId> alone_;                    // lights without a junction
  std::vector<NodeId> crossings_;             // lit, for pedestrians
  std::vector<Link> links_;
  std::map<NodeId, std::size_t> number_;  // of members, in the order found
  std::vector<std::size_t> parent_;
};

bool Clusters::meets_train(const std::vector<StretchId>& walk) const {
  return std::ranges::any_of(
      walk, [&](StretchId s) { return (flags(roads_.to_node(s)) & flag::level_crossing) != 0; });
}

void Clusters::sort_out(NodeId light) {
  const bool on_foot = (flags(light) & flag::signal_crossing) != 0;
  const bool for_cars = (flags(light) & flag::signals) != 0;
  if (has_own_place(light) || (for_cars && (flags(light) & flag::level_crossing) != 0)) {
    draft_.report.count(of_others);
    return;
  }
  if (for_cars && is_junction(light)) {
    junctions_.insert(light);
  } else if (on_foot) {
    crossings_.push_back(light);
    if (for_cars && !draft_.node_tags(light).is("traffic_signals", "pedestrian_crossing")) {
      look_ahead(light);
    }
  } else if (for_cars) {
    look_ahead(light);
  }
}

/// Finds the junction a light beside the road holds; without one the light stands alone.
void Clusters::look_ahead(NodeId light) {
  const bool on_foot = (flags(light) & flag::signal_crossing) != 0;
  bool belongs = on_foot;  // a crossing is placed later, whatever it holds
  bool elsewhere = false;
  if (road_ends(roads_, light) != 2) {
    if (!belongs) alone_.insert(light);
    return;
  }
  const auto leaving = roads_.leaving(light);
  for (const std::size_t side : {0U, 1U}) {
    const StretchId on = leaving[side];
    const StretchId arriving = leaving[1 - side].back();
    if (!traffic_takes(draft_, arriving) || !faces(draft_, roads_, arriving, Sign::light)) continue;
    const auto walk = walk_on(roads_, on, joined_within_m);
    if (walk.empty()) continue;
    const NodeId end = roads_.to_node(walk.back());
    if (meets_train(walk) || has_own_place(end)) {
      elsewhere = true;
    } else if (is_junction(end)) {
      held_[end].push_back({light, end, walk});
      belongs = true;
    }
  }
  if (elsewhere && !belongs) draft_.report.count(of_others);
  if (!elsewhere && !belongs) alone_.insert(light);
}

bool Clusters::is_signalled(NodeId junction, const std::vector<Link>& lights) const {
  std::set<StretchId> lit;  // the ways into the junction that lights hold
  for (const Link& light : lights) lit.insert(light.walk.back());
  std::size_t entries = 0;
  for (const JunctionArm& arm : arms_at(draft_, roads_, junction)) {
    if (arm.can_enter()) ++entries;
  }
  return 2 * lit.size() >= entries;
}

void Clusters::decide_junctions() {
  for (const auto& [junction, lights] : held_) {
    if (junctions_.contains(junction) || is_signalled(junction, lights)) {
      junctions_.insert(junction);
      links_.insert(links_.end(), lights.begin(), lights.end());
      continue;
    }
    for (const Link& light : lights) {
      if ((flags(light.from) & flag::signal_crossing) == 0) alone_.insert(light.from);
    }
  }
}

/// Joins signalled junctions and lights by themselves that are near each other by road.
void Clusters::link_anchors() {
  std::set<NodeId> anchors = junctions_;
  anchors.insert(alone_.begin(), alone_.end());
  for (const NodeId from : anchors) {
    links_.push_back({from, from, {}});
    const auto around = nodes_around(roads_, from, joined_within_m);
    for (const Reached& reached : around) {
      if (reached.node <= from || !anchors.contains(reached.node)) continue;
      Link link{from, reached.node, {}};
      for (const Reached* at = &reached; at->by.known();) {
        link.walk.push_back(at->by);
        at = &*std::ranges::find(around, roads_.from_node(at->by), &Reached::node);
      }
      links_.push_back(std::move(link));
    }
  }
}

/// Joins a crossing to the nearest member it reaches without passing a junction; else to itself.
void Clusters::link_crossing(NodeId crossing) {
  Link best{crossing, crossing, {}};
  double least = joined_within_m;
  for (const StretchId away : roads_.leaving(crossing)) {
    std::vector<StretchId> walk;
    double metres = 0;
    for (const StretchId s : walk_on(roads_, away, joined_within_m)) {
      walk.push_back(s);
      metres += roads_.piece(s).length_m;
      if (!number_.contains(roads_.to_node(s))) continue;
      if (metres < least) best = {crossing, roads_.to_node(s), walk}, least = metres;
      break;
    }
  }
  links_.push_back(best);
}

std::size_t Clusters::root(NodeId node) {
  const auto [at, is_new] = number_.try_emplace(node, parent_.size());
  if (is_new) parent_.push_back(at->second);
  std::size_t number = at->second;
  while (parent_[number] != number) number = parent_[number];
  return number;
}

void Clusters::join(const Link& link) {
  const std::size_t a = root(link.from);
  const std::size_t b = root(link.to);
  parent_[std::max(a, b)] = std::min(a, b);
}

void Clusters::add_walk(LightCluster& cluster, const Link& link) const {
  cluster.spot.nodes.push_back(link.from);
  cluster.spot.nodes.push_back(link.to);
  for (const StretchId s : link.walk) {
    cluster.spot.nodes.push_back(roads_.from_node(s));
    cluster.spot.nodes.push_back(roads_.to_node(s));
    cluster.spot.inside.push_back(s.piece());
  }
}

void Clusters::add_short_pieces(LightCluster& cluster) const {
  for (const NodeId node : std::vector<NodeId>(cluster.spot.nodes)) {
    for (const StretchId away : roads_.leaving(node)) {
      if (!cluster.spot.holds(roads_.to_node(away)) || is_ring(roads_, away)) continue;
      if (roads_.piece(away).length_m <= joined_within_m)
        cluster.spot.inside.push_back(away.piece());
    }
  }
  cluster.spot.tidy();
}

std::vector<LightCluster> Clusters::gather() {
  std::map<std::size_t, LightCluster> by_root;
  for (const Link& link : links_) add_walk(by_root[root(link.from)], link);
  std::vector<LightCluster> clusters;
  for (auto& [number, cluster] : by_root) {
    cluster.spot.tidy();
    add_short_pieces(cluster);
    for (const NodeId node : cluster.spot.nodes) {
      if ((flags(node) & (flag::signals | flag::signal_crossing)) != 0)
        cluster.lights.push_back(node);
      if ((flags(node) & flag::signal_crossing) != 0) cluster.has_crossing = true;
      if (junctions_.contains(node)) cluster.has_junction = true;
    }
    clusters.push_back(std::move(cluster));
  }
  std::ranges::sort(clusters, {}, [](const LightCluster& c) { return c.spot.nodes; });
  return clusters;
}

std::vector<LightCluster> Clusters::find() {
  for (std::size_t row = 0; row < roads_.nodes.size(); ++row) {
    constexpr std::uint32_t lights = flag::signals | flag::signal_crossing;
    if ((roads_.nodes[row].flags & lights) != 0) sort_out(NodeId{row});
  }
  decide_junctions();
  link_anchors();
  for (const Link& link : links_) join(link);
  const std::size_t linked = links_.size();
  for (const NodeId crossing : crossings_) {
    if (!number_.contains(crossing)) link_crossing(crossing);
  }
  for (std::size_t i = linked; i < links_.size(); ++i) join(links_[i]);
  return gather();
}

}  // namespace

std::vector<LightCluster> find_light_clusters(Draft& draft, const road::Roads& roads) {
  return Clusters(draft, roads).find();
}

}  // namespace loopwright::mark
