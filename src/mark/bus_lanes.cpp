// Bus lanes of a road, from all three families of tags in use.
//
// 1. Each family is read by itself. 2. Facts of the same direction whose sides don't contradict each
//    other are one lane: a known side and hours fill in for unknown ones. 3. Two families with
//    different hours leave none (check the plate), in doubt. 4. A lane of unknown direction is the
//    only known one, when there is exactly one.
// Source: OSM wiki, page Bus lanes: "a reader must combine all".
#include <algorithm>
#include <tuple>

#include "bus_lane_families.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;
using road::LaneSide;

/// What all families say of one lane.
using Lane = std::vector<BusLaneFact>;

std::string without_spaces(std::string text) {
  std::erase(text, ' ');
  return text;
}

bool same_lane(const BusLaneFact& a, const BusLaneFact& b) {
  const bool sides_agree =
      a.side == b.side || a.side == LaneSide::unknown || b.side == LaneSide::unknown;
  return a.direction == b.direction && sides_agree;
}

/// Most roads don't, and needn't be read by three families.
bool mentions_buses(const Tags& tags) {
  bool found = false;
  tags.each([&](std::string_view key, std::string_view) {
    found = found || key.find("bus") != key.npos || key.find("psv") != key.npos;
  });
  return found;
}

void add(std::vector<Lane>& lanes, const BusLaneFact& fact) {
  const auto same = std::ranges::find_if(lanes, [&](const Lane& lane) {
    return std::ranges::all_of(lane, [&](const BusLaneFact& f) { return same_lane(f, fact); });
  });
  if (same == lanes.end()) {
    lanes.push_back({fact});
  } else {
    same->push_back(fact);
  }
}

bool is_unknown(const Lane& lane) {
  return lane.front().direction == LaneDirection::unknown;
}

/// Step 4.
void settle_unknown(std::vector<Lane>& lanes) {
  if (lanes.size() != 2 || is_unknown(lanes[0]) == is_unknown(lanes[1])) return;
  if (is_unknown(lanes[0])) std::swap(lanes[0], lanes[1]);
  lanes[0].insert(lanes[0].end(), lanes[1].begin(), lanes[1].end());
  lanes.pop_back();
}

/// The hours of the facts that have some, when they are the same; `clash` when they aren't.
const BusLaneFact* one_with_hours(const Lane& lane, bool& clash) {
  const BusLaneFact* found = nullptr;
  for (const BusLaneFact& fact : lane) {
    if (fact.hours.empty()) continue;
    clash = clash || (found && without_spaces(found->hours) != without_spaces(fact.hours));
    if (!found) found = &fact;
  }
  return found;
}

BusLaneFact join(const Lane& lane) {
  BusLaneFact joined = lane.front();
  joined.doubtful = std::ranges::all_of(lane, &BusLaneFact::doubtful);
  for (const BusLaneFact& fact : lane) {
    if (joined.side == LaneSide::unknown) joined.side = fact.side;
    joined.contraflow = joined.contraflow || fact.contraflow;
  }
  bool clash = false;
  const BusLaneFact* timed = one_with_hours(lane, clash);
  if (clash) {
    joined.hours.clear(), joined.doubtful = true;
  } else if (timed) {
    joined.hours = timed->hours, joined.source = timed->source;
  }
  return joined;
}

}  // namespace

LaneDirection direction_of_suffix(std::string_view suffix, const OneWay& one_way) {
  if (suffix == ":forward") return LaneDirection::along;
  if (suffix == ":backward") return LaneDirection::against;
  if (!one_way.one_way || one_way.along == one_way.against) return LaneDirection::unknown;
  return one_way.along ? LaneDirection::along : LaneDirection::against;
}

bool is_contraflow(LaneDirection direction, const OneWay& one_way) {
  if (!one_way.one_way || direction == LaneDirection::unknown) return false;
  return direction == LaneDirection::along ? !one_way.along : !one_way.against;
}

std::vector<BusLaneFact> bus_lanes_of(const Tags& tags, const OneWay& one_way, Side side) {
  if (!mentions_buses(tags)) return {};
  const LaneRoad road{tags, one_way, side};
  std::vector<Lane> lanes;
  for (const auto& family :
       {counted_bus_lanes(road), listed_bus_lanes(road), sided_bus_lanes(road)}) {
    for (const BusLaneFact& fact : family) add(lanes, fact);
  }
  settle_unknown(lanes);
  std::vector<BusLaneFact> joined;
  for (const Lane& lane : lanes) joined.push_back(join(lane));
  std::ranges::sort(joined, {},
                    [](const BusLaneFact& l) { return std::tuple(l.direction, l.side, l.hours); });
  return joined;
}

}  // namespace loopwright::mark
