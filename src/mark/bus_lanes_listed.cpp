// Second family: a value for each lane, from left to right as one drives.
//
// 1. bus:lanes, its empty or missing places filled from psv:lanes; what cars may do from
//    motorcar:lanes, motor_vehicle:lanes, vehicle:lanes, access:lanes (the first that fills a
//    place). All with :forward and :backward, and with :conditional.
// 2. A place where cars are "no" and buses may drive is a bus lane; the hours are those of the ban
//    on cars. When only the bus key has hours they are taken, in doubt.
// 3. Without any key for cars, "designated" for buses is taken as a bus lane: by the wiki it forbids
//    nobody, so without hours it is in doubt. Cars "yes" at all times: no bus lane.
// 4. Who may use it: every mode whose key says "yes" or "designated" there.
// 5. The first place is the left side, the last the right; on a two-way road without a suffix
//    neither direction nor side is known.
// 6. A clause of a less special key than the plain value of that place frees no lane, but may reserve it.
// 7. Words of one place that contradict each other, and a conditional without '@', can't be read: a
//    lane in doubt, without hours (lane_lists.cpp).
// Source: OSM wiki, pages Bus lanes, Key:bus:lanes, Key:access (order of the modes).
#include <algorithm>
#include <array>

#include "bus_lane_families.hpp"
#include "lane_lists.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;
using road::LaneSide;

constexpr std::array<std::string_view, 2> bus_modes{"bus", "psv"};
constexpr std::array<std::string_view, 4> car_modes{"motorcar", "motor_vehicle", "vehicle",
                                                    "access"};

constexpr std::array<std::string_view, 7> lane_modes{"bus",        "psv",   "taxi", "bicycle",
                                                     "motorcycle", "moped", "hgv"};
constexpr std::size_t most_lanes = 20;  // a list of more is no list of lanes

std::string who_uses(const LaneRoad& road, std::string_view suffix, std::size_t lane) {
  std::string who;
  for (const std::string_view mode : lane_modes) {
    const std::array<std::string_view, 1> alone{mode};
    if (!lets(lane_lists(road.tags, alone, suffix), lane)) continue;
    who.append(who.empty() ? "" : ";").append(mode);
  }
  return who;
}

/// What one suffix says of its lanes.
struct Lists {
  const Tags& tags;
  LaneLists buses, cars;
};

struct Judged {
  OnHours when;
  std::string doubt;
  bool alone = false;
};

/// Step 3.
Judged judge_by_buses(const Lists& lists, std::size_t lane) {
  Judged judged{hours_of(lists.buses, lane, "designated"), {}, false};
  const std::string plain = base_tag(lists.tags, lists.buses, lane);
  if (judged.when.doubtful) {
    judged.doubt = always_but(plain, timed_key(lists.buses), judged.when.text);
  } else if (!has_clauses(lists.buses)) {
    judged.doubt = plain + " shuts nobody else out", judged.alone = true;
  }
  return judged;
}

/// Step 2.
Judged judge_place(const Lists& lists, std::size_t lane) {
  if (lists.cars.empty()) return judge_by_buses(lists, lane);
  Judged judged{hours_of(lists.cars, lane, "no"), {}, false};
  judged.when.ever = judged.when.ever && lets(lists.buses, lane);
  const std::string plain = base_tag(lists.tags, lists.cars, lane);
  if (judged.when.doubtful)
    judged.doubt = always_but(plain, timed_key(lists.cars), judged.when.text);
  const OnHours by_bus = hours_of(lists.buses, lane, "designated");
  if (judged.when.text.empty() && !by_bus.text.empty()) {
    judged.when.text = by_bus.text;
    judged.doubt = always_but(plain, timed_key(lists.buses), by_bus.text);
  }
  return judged;
}

/// The first tag that can't be read for a place; empty when all can be.
std::string unread_tag(const Lists& lists, std::size_t lane) {
  for (const auto* side : {&lists.cars, &lists.buses}) {
    if (std::string tag = mixed_tag(lists.tags, *side, lane); !tag.empty()) return tag;
    for (const LaneList& list : *side)
      if (!list.unread.empty()) return list.unread;
  }
  return {};
}

/// What can't be read leaves a lane without hours.
void doubt_unread(Judged& judged, const Lists& lists, std::size_t lane) {
  const std::string tag = unread_tag(lists, lane);
  if (tag.empty()) return;
  judged.when.text.clear(), judged.alone = false;
  judged.doubt = not_readable(tag);
}

/// The lane, nobody knows which, of lists that have none but for a tag that can't be read.
std::vector<BusLaneFact> unread_lane(const LaneRoad& road, const Lists& lists,
                                     std::string_view suffix) {
  const std::size_t behind_all = std::max(lane_count(lists.buses), lane_count(lists.cars));
  BusLaneFact fact;
  fact.source = unread_tag(lists, behind_all);
  if (fact.source.empty()) return {};
  fact.direction = direction_of_suffix(suffix, road.one_way);
  fact.contraflow = is_contraflow(fact.direction, road.one_way);
  fact.who = lists.buses.front().key.substr(0, 3);
  fact.doubt = not_readable(fact.source);
  return {fact};
}

LaneSide side_of(std::size_t lane, std::size_t count) {
  if (count < 2) return LaneSide::unknown;
  if (lane == 0) return LaneSide::left;
  return lane + 1 == count ? LaneSide::right : LaneSide::unknown;
}

std::vector<BusLaneFact> with_suffix(const LaneRoad& road, std::string_view suffix) {
  const Lists lists{road.tags, lane_lists(road.tags, bus_modes, suffix),
                    lane_lists(road.tags, car_modes, suffix)};
  if (lists.buses.empty()) return {};
  const std::size_t count = std::max(lane_count(lists.buses), lane_count(lists.cars));
  // Without a suffix places run along the way's nodes; only traffic that does so sees them so.
  const bool sides_known = !suffix.empty() || (road.one_way.one_way && road.one_way.along);
  std::vector<BusLaneFact> facts;
  for (std::size_t lane = 0; lane < count; ++lane) {
    Judged judged = judge_place(lists, lane);
    if (!judged.when.ever) continue;
    doubt_unread(judged, lists, lane);
    BusLaneFact fact;
    fact.direction = direction_of_suffix(suffix, road.one_way);
    fact.contraflow = is_contraflow(fact.direction, road.one_way);
    if (sides_known && count <= most_lanes) {
      fact.side = side_of(lane, count);
      fact.lane = static_cast<std::uint8_t>(lane + 1),
      fact.lanes = static_cast<std::uint8_t>(count);
    }
    fact.hours = std::move(judged.when.text);
    fact.doubt = std::move(judged.doubt), fact.alone = judged.alone;
    fact.who = who_uses(road, suffix, lane);
    fact.source = source_of(road.tags, has_clauses(lists.cars) ? lists.cars : lists.buses);
    facts.push_back(std::move(fact));
  }
  return facts.empty() ? unread_lane(road, lists, suffix) : facts;
}

/// Every lane of the lists says yes, and no clause ever says otherwise.
bool open_everywhere(const LaneLists& lists) {
  if (lists.empty() || has_clauses(lists) || lane_count(lists) == 0) return false;
  for (std::size_t lane = 0; lane < lane_count(lists); ++lane) {
    const std::string_view value = base_of(lists, lane);
    if (value != "yes" && value != "designated" && value != "permissive") return false;
  }
  return true;
}

}  // namespace

std::string cars_in_every_lane(const LaneRoad& road, LaneDirection direction) {
  for (const std::string_view suffix : lane_suffixes) {
    if (direction_of_suffix(suffix, road.one_way) != direction) continue;
    const auto cars = lane_lists(road.tags, car_modes, suffix);
    if (open_everywhere(cars)) return tag_text(road.tags, cars.front().key);
  }
  return {};
}

std::vector<BusLaneFact> listed_bus_lanes(const LaneRoad& road) {
  std::vector<BusLaneFact> facts;
  for (const std::string_view suffix : lane_suffixes) {
    for (BusLaneFact& fact : with_suffix(road, suffix)) facts.push_back(std::move(fact));
  }
  return facts;
}

}  // namespace loopwright::mark
