// Third family: busway=*, which names a side of the way. Discouraged since a vote of November 2024,
// but still in the map, and still a bus lane on the ground.
//
// 1. busway, busway:left, busway:right, busway:both = lane: with the traffic of that side of the
//    road. = opposite_lane: against it (contraflow). Other values are no lanes of this road.
// 2. Which way its traffic goes, and on which side its buses see it: lane_sides.cpp.
// 3. Buses may use it, and bicycles where cycleway=share_busway says so.
// 4. Hours from busway…:conditional, which no page documents: "lane @ (…)", "yes @ (…)", or bare
//    hours. "no @ (…)" frees the lane then. What says anything else, or that there never is a lane
//    though the plain key has one, leaves a lane without hours, in doubt.
// Source: OSM wiki, pages Key:busway and Proposal:Deprecate busway.
#include <optional>
#include <utility>

#include "bus_lane_families.hpp"
#include "lane_sides.hpp"
#include "loopwright/hours/condition.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;
using road::LaneSide;

bool is_lane(std::string_view value) {
  return value == "lane" || value == "opposite_lane";
}

LaneDirection turned(LaneDirection direction) {
  if (direction == LaneDirection::unknown) return direction;
  return direction == LaneDirection::along ? LaneDirection::against : LaneDirection::along;
}

/// What a value in the conditional says of the lane; empty: nobody knows.
std::optional<bool> says_lane(std::string_view value) {
  if (is_lane(value) || value == "yes" || value == "designated") return true;
  if (value == "no" || value == "none") return false;
  return std::nullopt;
}

/// When the lane that the plain key has is in force; not ever: the conditional can't be read, or
/// contradicts the key.
OnHours hours_of_key(std::string_view text) {
  std::vector<OnClause> clauses;
  for (const hours::Clause& clause : hours::split_conditional(text)) {
    const std::optional<bool> on = says_lane(clause.value);
    if (!on) return {};
    clauses.push_back({*on, clause.condition});
  }
  if (clauses.empty() && !text.empty()) clauses.push_back({true, std::string(text)});
  // The plain key is needed to say that there is a lane; it doesn't mean "always" where clauses
  // switch it on, and so is in no doubt by them.
  return on_hours(true, clauses);
}

/// cycleway=share_busway, of this side or of the whole road.
bool shares_with_bicycles(const Tags& tags, LaneSide way_side) {
  const auto says = [&](std::string_view key) { return tags.is(key, "share_busway"); };
  if (says("cycleway") || says("cycleway:both")) return true;
  const bool left = way_side != LaneSide::right && says("cycleway:left");
  return left || (way_side != LaneSide::left && says("cycleway:right"));
}

/// The lane of one side of the way (unknown: the road as a whole), when its key says so.
void add_lane(std::vector<BusLaneFact>& facts, const LaneRoad& road, const std::string& key,
              LaneSide way_side) {
  const std::string_view value = road.tags.get(key);
  if (!is_lane(value)) return;
  const OnHours when = hours_of_key(road.tags.get(key + ":conditional"));
  BusLaneFact fact;
  fact.direction = flow_on(way_side, road);
  if (value == "opposite_lane") fact.direction = turned(fact.direction), fact.contraflow = true;
  fact.side = side_seen(way_side, fact.direction);
  fact.hours = when.text;
  fact.who = shares_with_bicycles(road.tags, way_side) ? "bus;bicycle" : "bus";
  const bool plain = when.ever && when.text.empty();
  fact.source = tag_text(road.tags, key + (plain ? "" : ":conditional"));
  if (!when.ever) fact.doubt = fact.source + " doesn't say when there is a lane";
  facts.push_back(std::move(fact));
}

}  // namespace

std::vector<BusLaneFact> sided_bus_lanes(const LaneRoad& road) {
  std::vector<BusLaneFact> facts;
  for (const auto& [key, way_side] : sided_keys(road, "busway"))
    add_lane(facts, road, key, way_side);
  return facts;
}

}  // namespace loopwright::mark
