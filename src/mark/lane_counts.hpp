// How many lanes a car has in the direction of a stretch, and where their arrows point.
//
//   if (const auto lanes = car_lanes(draft, stretch)) lanes->count
//
// Rules: private to mark. Nothing is made up: no tag, no number.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

struct LaneCount {
  int count = 0;
  bool certain = true;  ///< false: half of a total, or a bus lane that may be counted or not
  std::string tag;
  bool half = false;  ///< of what the tag says, which is for both ways
  int for_buses = 0;  ///< of what the tag says: taken off

  [[nodiscard]] std::string words() const;  ///< "half of lanes=4", "lanes=2 less 1 for buses"
};
std::optional<LaneCount> car_lanes(const Draft& draft, StretchId stretch);

/// The lanes of turn:lanes from left to right as one drives, each with its arrows.
struct LaneArrows {
  std::vector<std::vector<std::string_view>> lanes;
  std::string tag;
  OsmObject source;
  bool contradicted = false;  ///< by `lanes`, which tells of others or of too few: nobody knows

  /// Lanes by which one may go on along the road: "through", no arrow, or one that merges.
  [[nodiscard]] int going_ahead() const;
  [[nodiscard]] bool merges() const;  ///< a lane ends: merge_to_left or merge_to_right
};
std::optional<LaneArrows> lane_arrows(const Draft& draft, StretchId stretch);

/// The arrows met last before the first junction on a path, its last stretch left out: on the path
/// itself, or up to 40 m before it where nothing joins.
std::optional<LaneArrows> arrows_before_junction(const Draft& draft, const road::Roads& roads,
                                                 const std::vector<StretchId>& path);

}  // namespace loopwright::mark
