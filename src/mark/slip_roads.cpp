// Leaving a fast road, or joining it, at its own speed.
//
// 1. Main road: a motorway, a trunk road or a dual carriageway that is no link and no ring. A link
//    leaves it where the main road goes on and the link turns off by under 25 degrees; it joins where
//    the main road comes from behind and the link turns in by as little. Not where the main road's
//    limit is known to be 30 mph or 50 km/h at most: lanes part in towns too.
// 2. From there the links that follow (or came before) are the slip road, up to lights, a ring or
//    another road; together at least 60 m.
// 3. None when the main road meets, within the link's length and 50 m more, lights, a ring or the
//    very road the link leads to: then it is a lane that cuts a corner of a junction on the level
//    (a channelised turn, a bypass lane of a roundabout).
// Direction matters: only the way its traffic runs. The main road itself may be one a learner can't
// drive, or one that leaves the map. Inferred: the tag link alone says none of this.
// Sources: OSM wiki, page Tag:highway=trunk_link for the two uses; 25 degrees and 60 m from the
// project's notes on tags, the rest ours.
#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include "approach.hpp"
#include "law_days.hpp"
#include "passing.hpp"
#include "public_road.hpp"
#include "run_rules.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::RoadClass;

constexpr double merge_under_deg = 25, least_m = 60;
constexpr int slow_mph = 30, slow_kmh = 50;
constexpr double on_the_level_m = 50, same_junction_m = 100;

class SlipRoads {
 public:
  explicit SlipRoads(Draft& draft) : draft_(draft), roads_(draft.roads()) {}
  RunFamily find();

 private:
  enum class End : std::uint8_t { leaves, joins };
  using Chain = std::vector<StretchId>;  ///< from the main road on, or back

  [[nodiscard]] bool is_link(StretchId stretch) const;
  [[nodiscard]] bool is_main(StretchId stretch) const;
  [[nodiscard]] bool is_slow(StretchId stretch) const;
  [[nodiscard]] bool ends_a_link(NodeId node) const;
  [[nodiscard]] bool merges(StretchId main, StretchId link, End end) const;
  [[nodiscard]] StretchId main_beyond(StretchId link, End end) const;
  [[nodiscard]] StretchId main_on(StretchId stretch) const;
  [[nodiscard]] Chain chain_of(StretchId link, End end) const;
  [[nodiscard]] bool on_the_level(StretchId beyond, const Chain& chain, End end) const;
  void look_at(StretchId link, End end);

  Draft& draft_;
  road::Roads roads_;
  std::set<StretchId> found_;
};

bool SlipRoads::is_link(StretchId stretch) const {
  return road::name(roads_.piece(stretch).road_class).ends_with("_link") &&
         !is_ring(roads_, stretch) && roads_.drivable(stretch);
}

bool SlipRoads::is_main(StretchId stretch) const {
  constexpr std::uint32_t dual = road::piece_flag::dual | road::piece_flag::dual_inferred;
  const road::Piece& piece = roads_.piece(stretch);
  if (road::name(piece.road_class).ends_with("_link") || is_ring(roads_, stretch)) return false;
  return piece.road_class == RoadClass::motorway || piece.road_class == RoadClass::trunk ||
         (piece.flags & dual) != 0;
}

bool SlipRoads::is_slow(StretchId stretch) const {
  const road::LimitOnDay limit = draft_.law.on(roads_.stretch(stretch).limit, newest_day);
  return limit.value > 0 && limit.value <= (limit.unit == SpeedUnit::mph ? slow_mph : slow_kmh);
}

/// Lights or a ring.
bool SlipRoads::ends_a_link(NodeId node) const {
  if ((roads_.nodes[node.index()].flags & road::node_flag::signals) != 0) return true;
  return std::ranges::any_of(roads_.leaving(node),
                             [&](StretchId away) { return is_ring(roads_, away); });
}

/// Step 1, of a main stretch that arrives where the link leaves, or goes on where it joins.
bool SlipRoads::merges(StretchId main, StretchId link, End end) const {
  if (!is_main(main) || !traffic_takes(draft_, main) || is_slow(main)) return false;
  const StretchId from = end == End::leaves ? main : link, to = end == End::leaves ? link : main;
  const double turn_deg =
      heading_change_deg(road::bearing_in_deg(roads_, from), road::bearing_out_deg(roads_, to));
  return std::abs(turn_deg) < merge_under_deg;
}

/// The main road beyond the node where the link leaves it, or behind the node where it joins: the
/// stretch that leads away from there. None when the link does neither.
StretchId SlipRoads::main_beyond(StretchId link, End end) const {
  const NodeId node = end == End::leaves ? roads_.from_node(link) : roads_.to_node(link);
  for (const StretchId near : roads_.leaving(node)) {
    if (!merges(end == End::leaves ? near.back() : near, link, end)) continue;
    for (const StretchId away : roads_.leaving(node)) {
      const StretchId driven = end == End::leaves ? away : away.back();
      if (away != near && is_main(away) && traffic_takes(draft_, driven)) return away;
    }
  }
  return {};
}

/// Where the main road goes on: a link that leaves it may be the straighter way.
StretchId SlipRoads::main_on(StretchId stretch) const {
  for (const StretchId away : roads_.leaving(roads_.to_node(stretch))) {
    const double turn_deg = heading_change_deg(road::bearing_in_deg(roads_, stretch),
                                               road::bearing_out_deg(roads_, away));
    if (is_main(away) && std::abs(turn_deg) < merge_under_deg &&
        !gets_nowhere(roads_, stretch, away))
      return away;
  }
  return straight_on(roads_, stretch);
}

/// Step 2: the links that follow each other, each once.
SlipRoads::Chain SlipRoads::chain_of(StretchId link, End end) const {
  Chain chain{link};
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const bool leaves = end == End::leaves;
    const NodeId node = leaves ? roads_.to_node(chain[i]) : roads_.from_node(chain[i]);
    if (ends_a_link(node)) continue;
    for (const StretchId away : roads_.leaving(node)) {
      const StretchId next = leaves ? away : away.back();
      if (!is_link(next) || std::ranges::find(chain, next) != chain.end()) continue;
      const StretchId first = leaves ? chain[i] : next, then = leaves ? next : chain[i];
      if (turn_into(roads_, StateId{first.index()}, then) != nullptr) chain.push_back(next);
    }
  }
  return chain;
}

/// Step 3.
bool SlipRoads::on_the_level(StretchId beyond, const Chain& chain, End end) const {
  std::set<NodeId> other_end;
  const NodeId last =
      end == End::leaves ? roads_.to_node(chain.back()) : roads_.from_node(chain.back());
  for (const Reached& near : nodes_around(roads_, last, same_junction_m)) {
    other_end.insert(near.node);
  }
  const double limit_m = mark::length_m(roads_, chain) + on_the_level_m;
  double walked_m = 0;
  for (StretchId s = beyond; s.known(); s = main_on(s)) {
    walked_m += roads_.piece(s).length_m;
    if (walked_m > limit_m) return false;
    if (ends_a_link(roads_.to_node(s)) || other_end.contains(roads_.to_node(s))) return true;
  }
  return false;
}

void SlipRoads::look_at(StretchId link, End end) {
  const StretchId beyond = main_beyond(link, end);
  if (!beyond.known()) return;
  const Chain chain = chain_of(link, end);
  if (mark::length_m(roads_, chain) < least_m || on_the_level(beyond, chain, end)) return;
  found_.insert(chain.begin(), chain.end());
}

RunFamily SlipRoads::find() {
  for (std::size_t row = 0; row < roads_.stretch_count(); ++row) {
    const StretchId stretch{row};
    if (!is_link(stretch)) continue;
    look_at(stretch, End::leaves);
    look_at(stretch, End::joins);
  }
  RunFamily family{Kind::slip_road, {}};
  for (const StretchId stretch : found_) {
    const std::string tag = "highway=" + std::string(road::name(roads_.piece(stretch).road_class));
    family.members.push_back(
        {stretch, Kind::slip_road, road::Confidence::inferred, draft_.text(tag)});
  }
  return family;
}

}  // namespace

RunFamily slip_road_runs(Draft& draft) {
  return SlipRoads(draft).find();
}

}  // namespace loopwright::mark
