// Method: of each stretch the lanes that whoever drives it has beside them are written down, each once, in
// an order of their own; stretches of which the same is written are one family.
#include "lane_runs.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

namespace loopwright::mark {
namespace {

using road::BusLane;
using road::LaneDirection;

/// All that a verdict hangs on.
std::set<std::string> lanes_beside(const road::Roads& roads, StretchId driven) {
  const auto other = driven.against() ? LaneDirection::along : LaneDirection::against;
  std::set<std::string> told;
  for (const BusLane& lane : roads.bus_lanes_of(driven.piece())) {
    if (lane.direction == other) continue;
    std::string text(roads.text(lane.hours));
    if (lane.doubtful != 0) text += "\nin doubt";
    if (lane.direction == LaneDirection::unknown) text += "\nof unknown direction";
    if (lane.contraflow != 0) text += "\nagainst the traffic";
    told.insert(std::move(text));
  }
  return told;
}

}  // namespace

std::vector<RunFamily> parted_by_lanes(const road::Roads& roads,
                                       const std::vector<RunMember>& members) {
  std::vector<std::set<std::string>> told;
  std::vector<RunFamily> families;
  for (const RunMember& member : members) {
    std::set<std::string> lanes = lanes_beside(roads, member.stretch);
    const auto known = std::ranges::find(told, lanes);
    const auto at = static_cast<std::size_t>(known - told.begin());
    if (known == told.end()) {
      told.push_back(std::move(lanes));
      families.push_back({road::Kind::bus_lane, {}, {}});
    }
    families[at].members.push_back(member);
  }
  if (families.empty()) families.push_back({road::Kind::bus_lane, {}, {}});
  return families;
}

}  // namespace loopwright::mark
