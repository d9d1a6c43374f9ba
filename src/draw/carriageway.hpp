// How wide a road is drawn and how many lanes it has, by what the map says or as is usual.
#pragma once

#include "loopwright/road/roads.hpp"

namespace loopwright::draw {

enum class WidthFrom : std::uint8_t { mapped, lanes, usual };

struct Carriageway {
  double width_m = 6;
  WidthFrom from = WidthFrom::usual;
  bool one_way = false;
  int lanes = 0;        ///< that a car driving along it may choose from, at least 1
  bool shares = false;  ///< one lane for both ways
  bool odd = false;     ///< the middle lane of three or more is nobody's by the map
};

Carriageway carriageway_of(const road::Roads& roads, StretchId stretch);

/// Metres from the middle line to the middle of a lane, towards the near side (left in Britain) when
/// positive; lane 0 is the nearest to it.
double lane_off_m(const Carriageway& road, int lane);

}  // namespace loopwright::draw
