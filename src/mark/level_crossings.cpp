// 1. A node railway=level_crossing counts when a railway in use (rail, light rail, narrow gauge,
//    preserved) passes it; else it is disused or an error, and reported. Trams have their own tag.
// 2. Crossing nodes that follow each other along one road within 60 m are one crossing over several
//    tracks (60 m is ours); the road between them is inside. Two roads over the same tracks are two.
// 3. A chance for each way over it. Its tag carries what is mapped of barriers and lights, since a
//    tag left out means unknown, not "no".
// Source: OSM wiki, pages Tag:railway=level_crossing and Key:crossing:barrier.
#include <algorithm>
#include <array>
#include <set>
#include <string>

#include "loopwright/mark/rules.hpp"
#include "passing.hpp"
#include "series.hpp"

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
    std::vector<Spot> nodes;
    for (const NodeId node : nodes_) nodes.push_back({{node}, {}});
    for (const Spot& spot : series_of(roads_, nodes, {.within_m = one_crossing_m})) add(spot);
  }

 private:
  void find_nodes();
  [[nodiscard]] NodeId best_told(const Spot& spot) const;
  void add(const Spot& spot);

  Draft& draft_;
  const road::Roads& roads_;
  std::set<NodeId> nodes_;  // on railways in use
};

void Crossings::find_nodes() {
  const std::set<std::int64_t> rails = rail_nodes(draft_.raw);
  for (std::size_t row = 0; row < roads_.nodes.size(); ++row) {
    const NodeId node{row};
    if ((roads_.nodes[row].flags & road::node_flag::level_crossing) == 0) continue;
    if (rails.contains(roads_.nodes[row].osm_id)) {
      nodes_.insert(node);
    } else {
      draft_.report.odd(node_object(roads_, node), no_railway);
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
