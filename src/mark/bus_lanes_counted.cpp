// First family: how many lanes are for buses.
//
// 1. lanes:bus and lanes:psv (buses and taxis; a learner may use neither), with :forward and
//    :backward, each with :conditional; the old lanes:psv:times holds bare hours.
// 2. Without a suffix, on a one-way road: with its traffic. On a two-way road 2 means one in each
//    direction, and 1 doesn't say in which. ":backward" on a one-way road is a contraflow lane.
// The count doesn't tell the side of the carriageway, so the side stays unknown.
// Source: OSM wiki, pages Bus lanes and Key:lanes:bus.
#include <algorithm>

#include "bus_lane_families.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/condition.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;

int read_count(std::string_view text) {
  if (text == "yes") return 1;
  return std::max(read_int(text).value_or(0), 0);
}

struct Counted {
  int lanes = 0;
  OnHours when;
  std::string source, doubt, who;
};

/// What one key says, with its conditions.
Counted count_of(const Tags& tags, const std::string& key) {
  Counted counted;
  counted.lanes = read_count(tags.get(key));
  const bool base_on = counted.lanes > 0;
  counted.source = tag_text(tags, key);
  std::vector<OnClause> clauses;
  for (const hours::Clause& clause : hours::split_conditional(tags.get(key + ":conditional"))) {
    clauses.push_back({read_count(clause.value) > 0, clause.condition});
    counted.lanes = std::max(counted.lanes, read_count(clause.value));
    counted.source = tag_text(tags, key + ":conditional");
  }
  if (clauses.empty() && tags.has(key + ":times")) {
    clauses.push_back({true, std::string(tags.get(key + ":times"))});
    counted.lanes = std::max(counted.lanes, 1);
    counted.source = tag_text(tags, key + ":times");
  }
  counted.when = on_hours(base_on && !tags.has(key + ":times"), clauses);
  if (counted.when.doubtful)
    counted.doubt = always_but(tag_text(tags, key), key + ":conditional", counted.when.text);
  return counted;
}

BusLaneFact fact_of(const Counted& counted, LaneDirection direction, const OneWay& one_way) {
  BusLaneFact fact;
  fact.direction = direction;
  fact.contraflow = is_contraflow(direction, one_way);
  fact.hours = counted.when.text;
  fact.who = counted.who, fact.doubt = counted.doubt, fact.source = counted.source;
  return fact;
}

}  // namespace

std::vector<BusLaneFact> counted_bus_lanes(const LaneRoad& road) {
  std::vector<BusLaneFact> facts;
  for (const std::string_view who : {"bus", "psv"}) {
    for (const std::string_view suffix : lane_suffixes) {
      Counted counted = count_of(road.tags, "lanes:" + std::string(who) + std::string(suffix));
      if (!counted.when.ever) continue;
      counted.who = who;
      const LaneDirection direction = direction_of_suffix(suffix, road.one_way);
      if (direction == LaneDirection::unknown && counted.lanes > 1) {
        facts.push_back(fact_of(counted, LaneDirection::along, road.one_way));
        facts.push_back(fact_of(counted, LaneDirection::against, road.one_way));
      } else {
        facts.push_back(fact_of(counted, direction, road.one_way));
      }
    }
  }
  return facts;
}

}  // namespace loopwright::mark
