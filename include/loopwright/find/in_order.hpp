// Points of a drive of one's own that passes chosen chances one after the other, for `--through`.
//
//   const InOrder drive = drive_in_order(roads, wish, chances, setting);   drive.through;   drive.passed;
//
// Rules: the points are tried: what `passed` tells is what route_through drives by them. A point can't say which way a
// road is driven, so more of them are set on each way in where fewer lead past a chance the wrong way. Throws UsageError
// when home is off the roads.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

struct InOrder {
  std::vector<Point> through;  ///< to five decimals of a degree, as they are typed
  std::size_t passed = 0;      ///< how many of the chances are passed, in order
  double minutes = 0;          ///< likely, of the whole drive; 0 when there is none
};
InOrder drive_in_order(const road::Roads& roads, const wish::Wish& wish,
                       std::span<const ChanceId> chances, const hours::Setting& setting);

}  // namespace loopwright::find
