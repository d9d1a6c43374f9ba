// First family: how many lanes are for buses.
//
// 1. lanes:bus and lanes:psv (buses and taxis; a learner may use neither), with :forward and
//    :backward, each with :conditional; the old lanes:psv:times holds bare hours.
// 2. Without a suffix, on a one-way road: with its traffic. On a two-way road 2 means one in each
//    direction, and 1 doesn't say in which. ":backward" on a one-way road is a contraflow lane.
// 3. A count that is no number, and a conditional without '@', can't be read: a lane, in doubt,
//    without hours.
// The count doesn't tell the side of the carriageway, so the side stays unknown.
// Source: OSM wiki, pages Bus lanes and Key:lanes:bus.
#include <algorithm>
#include <optional>

#include "bus_lane_families.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/condition.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;

/// Empty for what is no count; a missing one is none.
std::optional<int> read_count(std::string_view text) {
  if (text == "yes") return 1;
  if (text.empty() || text == "no" || text == "none") return 0;
  const auto count = read_int(text);
  return count && *count < 0 ? std::nullopt : count;
}

struct Counted {
  int lanes = 0;
  OnHours when;
  std::string source, doubt, who;
};

/// Takes what the clauses of a key say; false when some of it can't be read.
bool add_clauses(Counted& counted, std::vector<OnClause>& clauses, std::string_view text) {
  bool readable = true;
  for (const hours::Clause& clause : hours::split_conditional(text)) {
    const std::optional<int> count = read_count(clause.value);
    readable = readable && count && !clause.value.empty();
    clauses.push_back({count.value_or(1) > 0, clause.condition});
    counted.lanes = std::max(counted.lanes, count.value_or(1));
  }
  return readable && (text.empty() || !clauses.empty() || read_count(text) == 0);
}

/// A lane at unknown hours, by a tag that can't be read.
Counted unread(Counted counted, const std::string& tag) {
  counted.lanes = std::max(counted.lanes, 1);
  counted.when = {true, true, {}};
  counted.source = tag, counted.doubt = not_readable(tag);
  return counted;
}

/// What one key says, with its conditions.
Counted count_of(const Tags& tags, const std::string& key) {
  const std::string conditional = key + ":conditional";
  const std::optional<int> base = read_count(tags.get(key));
  Counted counted;
  counted.lanes = base.value_or(1);
  counted.source = tag_text(tags, key);
  std::vector<OnClause> clauses;
  if (!add_clauses(counted, clauses, tags.get(conditional)))
    return unread(counted, tag_text(tags, conditional));
  if (!base) return unread(counted, tag_text(tags, key));
  if (!clauses.empty()) counted.source = tag_text(tags, conditional);
  if (clauses.empty() && tags.has(key + ":times")) {
    clauses.push_back({true, std::string(tags.get(key + ":times"))});
    counted.lanes = std::max(counted.lanes, 1);
    counted.source = tag_text(tags, key + ":times");
  }
  counted.when = on_hours(*base > 0 && !tags.has(key + ":times"), clauses);
  if (counted.when.doubtful)
    counted.doubt = always_but(tag_text(tags, key), conditional, counted.when.text);
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
