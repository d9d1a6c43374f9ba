// 1. A node railway=level_crossing counts when a railway in use (rail, light rail, narrow gauge,
//    preserved) passes it; else it is disused or an error, and reported. Trams have their own tag.
// 2. Crossing nodes that follow each other along one road within 60 m are one crossing over several
//    tracks (60 m is ours); the road between them is inside. Two roads over the same tracks are two.
// 3. A chance for each way over it. Its tag carries what is mapped of barriers and lights, since a
//    tag left out means unknown, not "no".
// Source: OSM wiki, pages Tag:railway=level_crossing and Key:crossing:barrier.
#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>

#include "approach.hpp"
#include "loopwright/mark/rules.hpp"
#include "passing.hpp"

namespace loopwright::mark {
namespace {

constexpr std::string_view no_railway = "level crossing without a railway in use";
constexpr double one_crossing_m = 60;

std::set<std::int64_t> rail_nodes(const RawMap& raw) {
  constexpr std::array<std::string_view, 4> in_use = {"rail", "light_rail", "narrow_gauge",
                                                      "preserved"};
  std::set<std::int64_t> nodes;
  for (const RawWay& rail : raw.rails) {
    if (std::ranges::find(in_use, rail.tags.get("railway")) == in_use.end()) continue;
    nodes.insert(rail.nodes.begin(), rail.nodes.end());
  }
  return nodes;
}

std::string tag_of(const Tags& tags) {
  std::string text = "railway=level_crossing";
  for (const std::string_view key : {"crossing:barrier", "crossing:light", "crossing:bell",
                                     "crossing:activation", "crossing:on_demand", "supervised"}) {
    if (tags.has(key)) text.append(" ").append(key).append("=").append(tags.get(key));
  }
  return text;
}

class Crossings {
 public:
  Crossings(Draft& draft, const road::Roads& roads) : draft_(draft), roads_(roads) {}

  void mark() {
    find_nodes();
    for (const NodeId node : nodes_) {
      for (const StretchId away : roads_.leaving(node)) join_next(node, away);
    }
    for (const auto& [first, spot] : spots_) add(spot);
  }

 private:
  void find_nodes();
  void join_next(NodeId node, StretchId away);
  [[nodiscard]] NodeId best_told(const Spot& spot) const;
  void add(const Spot& spot);

  Draft& draft_;
  const road::Roads& roads_;
  std::set<NodeId> nodes_;          // on railways in use
  std::map<NodeId, NodeId> first_;  // of the crossing a node belongs to
  std::map<NodeId, Spot> spots_;    // crossings by their first node
};

void Crossings::find_nodes() {
  const std::set<std::int64_t> rails = rail_nodes(draft_.raw);
  for (std::size_t row = 0; row < roads_.nodes.size(); ++row) {
    const NodeId node{row};
    if ((roads_.nodes[row].flags & road::node_flag::level_crossing) == 0) continue;
    if (!rails.contains(roads_.nodes[row].osm_id)) {
      draft_.report.odd(node_object(roads_, node), no_railway);
      continue;
    }
    nodes_.insert(node);
    first_.emplace(node, node);
    spots_.emplace(node, Spot{{node}, {}});
  }
}

/// Joins the next crossing node straight on within the limit, and the road up to it.
void Crossings::join_next(NodeId node, StretchId away) {
  Spot between;
  double metres = 0;
  StretchId s = away;
  while (s.known()) {
    metres += roads_.piece(s).length_m;
    if (metres > one_crossing_m) return;
    between.inside.push_back(s.piece());
    between.nodes.push_back(roads_.to_node(s));
    if (nodes_.contains(roads_.to_node(s))) break;
    s = straight_on(roads_, s);
  }
  if (!s.known()) return;
  const NodeId kept = std::min(first_.at(node), first_.at(roads_.to_node(s)));
  const NodeId taken = std::max(first_.at(node), first_.at(roads_.to_node(s)));
  Spot& spot = spots_.at(kept);
  spot.take(between);
  if (kept != taken) {
    spot.take(spots_.at(taken));
    spots_.erase(taken);
    for (auto& [member, first] : first_) {
      if (first == taken) first = kept;
    }
  }
}

/// The crossing node whose tags say most, the least id of several.
NodeId Crossings::best_told(const Spot& spot) const {
  NodeId best;
  std::size_t most = 0;
  for (const NodeId node : spot.nodes) {
    if (!nodes_.contains(node)) continue;
    const std::size_t told = tag_of(draft_.node_tags(node)).size();
    if (told > most) best = node, most = told;
  }
  return best;
}

void Crossings::add(const Spot& spot) {
  const NodeId node = best_told(spot);
  const Tags& tags = draft_.node_tags(node);
  road::Place place;
  place.kind = road::Kind::level_crossing;
  place.source = node_object(roads_, node);
  place.at = middle_of(roads_, spot.nodes);
  place.name = draft_.text(tags.get("name"));
  const PlaceId id = draft_.add_place(place, spot.nodes, spot.inside);
  const std::string tag = tag_of(tags);
  for (const Path& path : ways_through(roads_, spot)) {
    add_passing(draft_, id, path, {.tag = tag, .source = place.source});
  }
}

}  // namespace

void mark_level_crossings(Draft& draft) {
  const road::Roads graph = draft.roads();
  Crossings(draft, graph).mark();
}

}  // namespace loopwright::mark
