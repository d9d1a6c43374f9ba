// 1. cycleway, cycleway:both, :left or :right = share_busway: cyclists share a bus lane on that side
//    (lane_sides.cpp).
// 2. psv=lane or bus=lane without any of these: a lane, nobody says on which side.
// Source: OSM wiki, Key:cycleway (share_busway: a bus lane that cyclists may use). psv=lane has no page;
// it is written for roads with a bus lane (common practice, no source).
#include "bus_lanes_inferred.hpp"

#include <utility>

#include "lane_sides.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

BusLaneFact fact_by(std::string tag, std::string who) {
  BusLaneFact fact;
  fact.who = std::move(who);
  fact.source = std::move(tag);
  fact.doubt = fact.source + " alone tells of it";
  return fact;
}

/// Of keys of one side and of the whole road, only the first that tells of a lane is believed.
std::vector<BusLaneFact> shared_with_cycles(const LaneRoad& road) {
  std::vector<BusLaneFact> facts;
  std::string told_by;
  for (const auto& [key, way_side] : sided_keys(road, "cycleway")) {
    const bool of_side = key.ends_with(":left") || key.ends_with(":right");
    if (!road.tags.is(key, "share_busway")) continue;
    if (!of_side && !told_by.empty() && told_by != key) continue;
    told_by = key;
    BusLaneFact fact = fact_by(tag_text(road.tags, key), "bus;bicycle");
    fact.direction = flow_on(way_side, road);
    fact.side = side_seen(way_side, fact.direction);
    facts.push_back(std::move(fact));
  }
  return facts;
}

}  // namespace

std::vector<BusLaneFact> inferred_bus_lanes(const LaneRoad& road) {
  std::vector<BusLaneFact> facts = shared_with_cycles(road);
  for (const std::string key : {"psv", "bus"}) {
    if (!facts.empty() || !road.tags.is(key, "lane")) continue;
    facts.push_back(fact_by(tag_text(road.tags, key), key == "psv" ? "bus;taxi" : "bus"));
    facts.back().direction = direction_of_suffix("", road.one_way);
  }
  return facts;
}

}  // namespace loopwright::mark
