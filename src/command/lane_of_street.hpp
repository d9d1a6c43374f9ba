// The bus lane that is meant when a note on a plate names its street alone.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::command {

/// A bus lane from its first to its last point, as its buses drive.
struct StreetLane {
  std::vector<Point> line;
  bool both_ways =
      false;         ///< there is one in each direction, and all that is told of both is the same
  std::string told;  ///< "Station Road, going north, bus lane on the left"
};

/// The only bus lane of the street that a point lies on; empty when the road at that point is beside one
/// itself, or no road is near. Throws UsageError that begins with `place` when the street has several, which
/// it lists, or none.
std::optional<StreetLane> lane_of_street(const road::Roads& roads, Point on_street,
                                         const std::string& place);

}  // namespace loopwright::command
