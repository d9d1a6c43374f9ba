// On a two-way road the left of the way carries the traffic along it where one drives on the left, and
// against it where one drives on the right; on a one-way road both sides carry the one direction.
#include "lane_sides.hpp"

namespace loopwright::mark {

using road::LaneDirection;
using road::LaneSide;

LaneDirection flow_on(LaneSide way_side, const LaneRoad& road) {
  if (road.one_way.one_way) return direction_of_suffix("", road.one_way);
  const bool near_side = (way_side == LaneSide::left) == (road.side == Side::left);
  return near_side ? LaneDirection::along : LaneDirection::against;
}

LaneSide side_seen(LaneSide way_side, LaneDirection direction) {
  if (direction != LaneDirection::against || way_side == LaneSide::unknown) return way_side;
  return way_side == LaneSide::left ? LaneSide::right : LaneSide::left;
}

std::vector<SidedKey> sided_keys(const LaneRoad& road, std::string_view key) {
  const std::string plain(key);
  const std::string both = plain + ":both";
  std::vector<SidedKey> keys{{plain + ":left", LaneSide::left},
                             {plain + ":right", LaneSide::right},
                             {both, LaneSide::left},
                             {both, LaneSide::right}};
  if (road.one_way.one_way) {
    keys.push_back({plain, LaneSide::unknown});
  } else {
    keys.push_back({plain, LaneSide::left});
    keys.push_back({plain, LaneSide::right});
  }
  return keys;
}

}  // namespace loopwright::mark
