// 1. cycleway, cycleway:both, :left or :right = share_busway: cyclists share a bus lane on that side, of
//    a one-way road with its traffic; of a two-way road the left of the way carries the traffic along
//    it where one drives on the left, and against it where one drives on the right.
// 2. psv=lane or bus=lane without any of these: a lane, nobody says on which side.
// Source: OSM wiki, Key:cycleway (share_busway: a bus lane that cyclists may use). psv=lane has no page;
// it is written for roads with a bus lane (common practice, no source).
#include "bus_lanes_inferred.hpp"

#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;
using road::LaneSide;

LaneDirection flow_on(LaneSide way_side, const LaneRoad& road) {
  if (road.one_way.one_way) return direction_of_suffix("", road.one_way);
  const bool near_side = (way_side == LaneSide::left) == (road.side == Side::left);
  return near_side ? LaneDirection::along : LaneDirection::against;
}

/// The side as buses see it.
LaneSide seen_by_buses(LaneSide way_side, LaneDirection direction) {
  if (direction != LaneDirection::against || way_side == LaneSide::unknown) return way_side;
  return way_side == LaneSide::left ? LaneSide::right : LaneSide::left;
}

void add(std::vector<BusLaneFact>& facts, const LaneRoad& road, const std::string& key,
         LaneSide way_side) {
  if (!road.tags.is(key, "share_busway")) return;
  BusLaneFact fact;
  fact.direction = flow_on(way_side, road);
  fact.side = seen_by_buses(way_side, fact.direction);
  fact.who = "bus;bicycle";
  fact.source = tag_text(road.tags, key);
  fact.doubt = fact.source + " alone tells of it";
  facts.push_back(std::move(fact));
}

}  // namespace

std::vector<BusLaneFact> inferred_bus_lanes(const LaneRoad& road) {
  std::vector<BusLaneFact> facts;
  add(facts, road, "cycleway:left", LaneSide::left);
  add(facts, road, "cycleway:right", LaneSide::right);
  for (const std::string key : {"cycleway:both", "cycleway"}) {
    if (!facts.empty()) break;
    if (road.one_way.one_way) {
      add(facts, road, key, LaneSide::unknown);
    } else {
      add(facts, road, key, LaneSide::left);
      add(facts, road, key, LaneSide::right);
    }
  }
  for (const std::string key : {"psv", "bus"}) {
    if (!facts.empty() || !road.tags.is(key, "lane")) continue;
    BusLaneFact fact;
    fact.direction = direction_of_suffix("", road.one_way);
    fact.who = key == "psv" ? "bus;taxi" : "bus";
    fact.source = tag_text(road.tags, key);
    fact.doubt = fact.source + " alone tells of it";
    facts.push_back(std::move(fact));
  }
  return facts;
}

}  // namespace loopwright::mark
