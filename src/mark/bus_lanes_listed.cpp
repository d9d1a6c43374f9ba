// Second family: a value for each lane, from left to right as one drives.
//
// 1. bus:lanes, its empty or missing places filled from psv:lanes; what cars may do from
//    motorcar:lanes, motor_vehicle:lanes, vehicle:lanes, access:lanes (the first that fills a
//    place). All with :forward and :backward, and with :conditional.
// 2. A place where cars are "no" and buses may drive is a bus lane; the hours are those of the ban
//    on cars. When only the bus key has hours they are taken, in doubt.
// 3. Without any key for cars, "designated" for buses is taken as a bus lane: by the wiki it forbids
//    nobody, so without hours it is in doubt. Cars "yes" at all times: no bus lane.
// 4. The first place is the left side, the last the right; on a two-way road without a suffix
//    neither direction nor side is known.
// Source: OSM wiki, pages Bus lanes and Key:bus:lanes.
#include <algorithm>
#include <array>

#include "bus_lane_families.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;
using road::LaneSide;

constexpr std::array<std::string_view, 2> bus_modes{"bus", "psv"};
constexpr std::array<std::string_view, 4> car_modes{"motorcar", "motor_vehicle", "vehicle",
                                                    "access"};

/// One clause with a value for each lane.
struct ListClause {
  std::vector<std::string_view> values;
  std::string condition;
};

/// One key, parsed: values without condition, and clauses.
struct LaneList {
  std::string key;
  std::vector<std::string_view> base;
  std::vector<ListClause> clauses;
  std::vector<hours::Clause> texts;  ///< what the clauses' values point into
};

std::string_view place(const std::vector<std::string_view>& values, std::size_t lane) {
  return lane < values.size() ? values[lane] : std::string_view();
}

/// The keys of some modes for one suffix, most special first; absent ones are left out.
template <std::size_t Count>
std::vector<LaneList> lists_of(const Tags& tags, const std::array<std::string_view, Count>& modes,
                               std::string_view suffix) {
  std::vector<LaneList> lists;
  for (const std::string_view mode : modes) {
    LaneList list;
    list.key = std::string(mode) + ":lanes" + std::string(suffix);
    if (tags.has(list.key)) list.base = split(tags.get(list.key), '|');
    list.texts = hours::read_conditional(tags.get(list.key + ":conditional"));
    for (const hours::Clause& text : list.texts) {
      list.clauses.push_back({split(text.value, '|'), text.condition});
    }
    if (!list.base.empty() || !list.clauses.empty()) lists.push_back(std::move(list));
  }
  return lists;
}

std::size_t lane_count(const std::vector<LaneList>& lists) {
  std::size_t count = 0;
  for (const LaneList& list : lists) {
    count = std::max(count, list.base.size());
    for (const ListClause& clause : list.clauses) count = std::max(count, clause.values.size());
  }
  return count;
}

std::string_view base_of(const std::vector<LaneList>& lists, std::size_t lane) {
  for (const LaneList& list : lists) {
    if (const auto value = place(list.base, lane); !value.empty()) return value;
  }
  return {};
}

/// The hours at which a place has a value, over all keys, the most special last since it wins.
LaneHours hours_of(const std::vector<LaneList>& lists, std::size_t lane, std::string_view value) {
  std::vector<LaneClause> clauses;
  for (auto list = lists.rbegin(); list != lists.rend(); ++list) {
    for (const ListClause& clause : list->clauses) {
      const std::string_view at = place(clause.values, lane);
      if (!at.empty()) clauses.push_back({at == value, clause.condition});
    }
  }
  return lane_hours(base_of(lists, lane) == value, clauses);
}

bool has_clauses(const std::vector<LaneList>& lists) {
  return std::ranges::any_of(lists, [](const LaneList& list) { return !list.clauses.empty(); });
}

bool lets_buses(const std::vector<LaneList>& buses, std::size_t lane) {
  const auto lets = [](std::string_view value) { return value == "designated" || value == "yes"; };
  if (lets(base_of(buses, lane))) return true;
  return std::ranges::any_of(buses, [&](const LaneList& list) {
    return std::ranges::any_of(list.clauses,
                               [&](const ListClause& c) { return lets(place(c.values, lane)); });
  });
}

/// The key that tells most: one with hours before one without.
std::string source_of(const Tags& tags, const std::vector<LaneList>& lists) {
  for (const LaneList& list : lists) {
    if (!list.clauses.empty()) return tag_text(tags, list.key + ":conditional");
  }
  return lists.empty() ? std::string() : tag_text(tags, lists.front().key);
}

/// Steps 2 and 3 for one place.
LaneHours judge_place(const std::vector<LaneList>& buses, const std::vector<LaneList>& cars,
                      std::size_t lane) {
  LaneHours by_bus = hours_of(buses, lane, "designated");
  if (cars.empty()) {
    by_bus.doubtful = by_bus.doubtful || !has_clauses(buses);
    return by_bus;
  }
  LaneHours by_car = hours_of(cars, lane, "no");
  by_car.ever = by_car.ever && lets_buses(buses, lane);
  if (by_car.hours.empty() && !by_bus.hours.empty()) {
    by_car.hours = by_bus.hours, by_car.doubtful = true;
  }
  return by_car;
}

LaneSide side_of(std::size_t lane, std::size_t count) {
  if (count < 2) return LaneSide::unknown;
  if (lane == 0) return LaneSide::left;
  return lane + 1 == count ? LaneSide::right : LaneSide::unknown;
}

std::vector<BusLaneFact> with_suffix(const LaneRoad& road, std::string_view suffix) {
  const auto buses = lists_of(road.tags, bus_modes, suffix);
  const auto cars = lists_of(road.tags, car_modes, suffix);
  if (buses.empty()) return {};
  const std::size_t count = std::max(lane_count(buses), lane_count(cars));
  const LaneDirection direction = direction_of_suffix(suffix, road.one_way);
  // Without a suffix places run along the way's nodes; only traffic that does so sees them so.
  const bool sides_known = !suffix.empty() || (road.one_way.one_way && road.one_way.along);
  std::vector<BusLaneFact> facts;
  for (std::size_t lane = 0; lane < count; ++lane) {
    const LaneHours when = judge_place(buses, cars, lane);
    if (!when.ever) continue;
    const LaneSide side = sides_known ? side_of(lane, count) : LaneSide::unknown;
    const auto& telling = has_clauses(cars) ? cars : buses;
    facts.push_back({direction, side, is_contraflow(direction, road.one_way), when.doubtful,
                     when.hours, source_of(road.tags, telling)});
  }
  return facts;
}

}  // namespace

std::vector<BusLaneFact> listed_bus_lanes(const LaneRoad& road) {
  std::vector<BusLaneFact> facts;
  for (const std::string_view suffix : lane_suffixes) {
    for (BusLaneFact& fact : with_suffix(road, suffix)) facts.push_back(std::move(fact));
  }
  return facts;
}

}  // namespace loopwright::mark
