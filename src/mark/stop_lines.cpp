// 1. A node highway=stop beside the road faces the drivers its direction names, else those who have
//    the nearer junction before them (facing.cpp). They stop for the first junction within 40 m
//    (ours, as for give way signs), and every legal turn there, out of the stretch that arrives,
//    is a chance: left, ahead or right.
// 2. highway=stop on the junction itself: with stop=all everybody stops. Otherwise (stop=minor, or
//    nothing) the minor arms do; which those are is inferred from the roads (priority.cpp).
// 3. Lights and roundabouts have their own rules: a stop there is left out and counted.
// Source: OSM wiki, pages Tag:highway=stop, Key:stop (stop=all, stop=minor), Key:stop:direction;
// Highway Code rule 171.
#include <algorithm>
#include <map>

#include "approach.hpp"
#include "facing.hpp"
#include "junction_kinds.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;

constexpr double sign_within_m = 40;

/// A way into a junction at whose end one must stop.
struct StopBefore {
  StretchId entry;
  NodeId sign;
  Confidence confidence = Confidence::certain;
};

class StopFinder {
 public:
  StopFinder(Draft& draft, const road::Roads& roads) : draft_(draft), roads_(roads) {}

  std::map<NodeId, std::vector<StopBefore>> find() {
    for (std::size_t row = 0; row < roads_.nodes.size(); ++row) {
      if ((roads_.nodes[row].flags & road::node_flag::stop) == 0) continue;
      const NodeId node{row};
      road_ends(roads_, node) == 2 ? look_ahead(node) : on_junction(node);
    }
    return std::move(found_);
  }

 private:
  void add(const StopBefore& stop) {
    const NodeId junction = roads_.to_node(stop.entry);
    if (draft_.is_controlled(junction)) {
      draft_.report.count("stop lines at lights or roundabouts");
    } else if (roads_.drivable(stop.entry)) {
      found_[junction].push_back(stop);
    }
  }

  void look_ahead(NodeId sign) {
    const auto leaving = roads_.leaving(sign);
    for (const std::size_t side : {0U, 1U}) {
      if (!faces(draft_, roads_, leaving[1 - side].back(), Sign::stop)) continue;
      const auto walk = walk_on(roads_, leaving[side], sign_within_m);
      if (!walk.empty() && road_ends(roads_, roads_.to_node(walk.back())) >= 3)
        add({walk.back(), sign, Confidence::certain});
    }
  }

  void on_junction(NodeId node) {
    if (road_ends(roads_, node) < 3) return;
    const bool all = draft_.node_tags(node).is("stop", "all");
    const auto arms = arms_at(draft_, roads_, node);
    const auto rules = priorities(draft_, roads_, node, arms);
    for (std::size_t arm = 0; arm < arms.size(); ++arm) {
      if (!all && !rules[arm].yields()) continue;
      for (const ArmPart& part : arms[arm].parts)
        add({part.away.back(), node, all ? Confidence::certain : Confidence::inferred});
    }
  }

  Draft& draft_;
  const road::Roads& roads_;
  std::map<NodeId, std::vector<StopBefore>> found_;
};

void add_stops(Draft& draft, const road::Roads& roads, NodeId junction,
               const std::vector<StopBefore>& stops) {
  const PlaceId place = add_node_place(draft, roads, junction, Kind::stop_line);
  draft.tables.places[place.index()].source = node_object(roads, stops.front().sign);
  for (const Path& path : ways_through(roads, {{junction}, {}})) {
    const auto stop = std::ranges::find(stops, path.front(), &StopBefore::entry);
    if (stop == stops.end()) continue;
    add_passing(draft, place, path,
                {.movement = turn_movement(turn_deg(roads, path)),
                 .confidence = stop->confidence,
                 .tag = "highway=stop",
                 .source = node_object(roads, stop->sign)});
  }
}

}  // namespace

void mark_stop_lines(Draft& draft) {
  const road::Roads graph = draft.roads();
  for (const auto& [junction, stops] : StopFinder(draft, graph).find())
    add_stops(draft, graph, junction, stops);
}

}  // namespace loopwright::mark
