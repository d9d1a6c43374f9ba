// Bus lanes of a road, from all three families of tags in use.
//
// 1. Each family is read by itself. 2. Facts of the same direction whose sides don't contradict each
//    other are one lane: a known side, lane and hours fill in for unknown ones, and whoever one of
//    them lets in may use it. 3. Two families with different hours leave none (check the plate), in
//    doubt. A list that only keeps a lane for buses without shutting cars out is in doubt unless
//    another family has the lane too; so is a lane that a list lets cars into. 4. A lane of unknown direction is the only known one, when
//    there is exactly one.
// 5. Where no family has a lane, one that another key tells of is in doubt (bus_lanes_inferred.cpp).
// Source: OSM wiki, page Bus lanes: "a reader must combine all".
#include <algorithm>
#include <tuple>

#include "bus_lane_families.hpp"
#include "bus_lanes_inferred.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;
using road::LaneSide;

/// What all families say of one lane.
using Lane = std::vector<BusLaneFact>;

/// Hours as one compares them: how they are spaced and bracketed means nothing.
std::string bare(std::string text) {
  std::erase_if(text, [](char c) { return c == ' ' || c == '(' || c == ')'; });
  return text;
}

bool same_lane(const BusLaneFact& a, const BusLaneFact& b) {
  const bool sides_agree =
      a.side == b.side || a.side == LaneSide::unknown || b.side == LaneSide::unknown;
  const bool lanes_agree = a.lane == b.lane || a.lane == 0 || b.lane == 0;
  return a.direction == b.direction && sides_agree && lanes_agree;
}

/// Most roads don't, and needn't be read by three families.
bool mentions_buses(const Tags& tags) {
  bool found = false;
  tags.each([&](std::string_view key, std::string_view value) {
    found = found || key.find("bus") != key.npos || key.find("psv") != key.npos ||
            value == "share_busway";
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

std::string says(const BusLaneFact& fact) {
  return fact.source.substr(0, fact.source.find('=')) + " says " + fact.hours;
}

/// Takes the hours of the facts that have some, when they are the same.
void join_hours(BusLaneFact& joined, const Lane& lane) {
  const BusLaneFact* timed = nullptr;
  for (const BusLaneFact& fact : lane) {
    if (fact.hours.empty()) continue;
    if (timed == nullptr) {
      timed = &fact, joined.hours = fact.hours, joined.source = fact.source;
    } else if (bare(timed->hours) != bare(fact.hours)) {
      joined.hours.clear(), joined.alone = false;
      joined.doubt = says(*timed) + ", " + says(fact);
      return;
    }
  }
}

/// The first doubt that nothing settles.
std::string doubt_of(const Lane& lane) {
  const bool alone = std::ranges::all_of(lane, &BusLaneFact::alone);
  const auto found = std::ranges::find_if(
      lane, [&](const BusLaneFact& fact) { return fact.doubtful() && fact.alone == alone; });
  return found == lane.end() ? std::string() : found->doubt;
}

/// Adds the words of a list that aren't in it yet.
void add_words(std::string& list, std::string_view more) {
  for (const std::string_view word : split(more, ';')) {
    const auto known = split(list, ';');
    if (std::ranges::find(known, word) != known.end()) continue;
    list.append(list.empty() ? "" : ";").append(word);
  }
}

/// A lane that the counts or sides have, though a list lets cars into all lanes of its direction.
std::string doubt_by_lists(const BusLaneFact& lane, const LaneRoad& road) {
  if (lane.direction == LaneDirection::unknown) return {};
  const std::string open = cars_in_every_lane(road, lane.direction);
  return open.empty() ? open
                      : lane.source + " says a bus lane, " + open + " lets cars in everywhere";
}

BusLaneFact join(const Lane& lane) {
  BusLaneFact joined = lane.front();
  for (const BusLaneFact& fact : lane) {
    if (joined.side == LaneSide::unknown) joined.side = fact.side;
    if (joined.lane == 0) joined.lane = fact.lane, joined.lanes = fact.lanes;
    joined.contraflow = joined.contraflow || fact.contraflow;
    add_words(joined.who, fact.who);
  }
  joined.alone = std::ranges::all_of(lane, &BusLaneFact::alone);
  joined.doubt = doubt_of(lane);
  join_hours(joined, lane);
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

std::string_view heading_of_doubt(const BusLaneFact& fact) {
  if (fact.alone) return "bus lane that shuts nobody else out";
  if (fact.doubt.ends_with(" can't be read")) return "bus lane tags can't be read";
  if (fact.doubt.ends_with(" doesn't say when there is a lane"))
    return "bus lane tags don't say when there is a lane";
  if (fact.doubt.ends_with(" alone tells of it")) return "bus lane told of in passing only";
  return "bus lane tags contradict each other";
}

std::vector<BusLaneFact> bus_lanes_of(const Tags& tags, const OneWay& one_way, Side side) {
  if (!mentions_buses(tags)) return {};
  const LaneRoad road{tags, one_way, side};
  std::vector<Lane> lanes;
  for (const auto& family :
       {counted_bus_lanes(road), listed_bus_lanes(road), sided_bus_lanes(road)}) {
    for (const BusLaneFact& fact : family) add(lanes, fact);
  }
  if (lanes.empty()) {
    for (const BusLaneFact& fact : inferred_bus_lanes(road)) add(lanes, fact);
  }
  settle_unknown(lanes);
  std::vector<BusLaneFact> joined;
  for (const Lane& lane : lanes) {
    joined.push_back(join(lane));
    if (!joined.back().doubtful()) joined.back().doubt = doubt_by_lists(joined.back(), road);
  }
  std::ranges::sort(joined, {}, [](const BusLaneFact& l) {
    return std::tuple(l.direction, l.side, l.lane, l.hours);
  });
  return joined;
}

}  // namespace loopwright::mark
