// How wide a road is drawn and how many lanes it has, by what the map says or as is usual.
#pragma once

#include "loopwright/road/roads.hpp"

namespace loopwright::draw {

enum class WidthFrom : std::uint8_t { mapped, lanes, usual };

struct Carriageway {
  double width_m = 6;
  WidthFrom from = WidthFrom::usual;
  bool one_way = false;
  int lanes = 1;        ///< in the direction of the stretch, bus lanes among them
  int back = 1;         ///< against it; 0 on a one-way road
  bool shares = false;  ///< one lane for both ways
  [[nodiscard]] int across() const { return shares ? 1 : lanes + back; }
};

/// Of a road as it is driven along a stretch.
Carriageway carriageway_of(const road::Roads& roads, StretchId stretch);

/// Metres from the middle line to the middle of a lane, towards the near side (left in Britain) when
/// positive; lane 0 is the nearest to it.
double lane_off_m(const Carriageway& road, int lane);

/// The lane to be in.
struct LaneChoice {
  int from_near = 0;       ///< 0: the one at the near kerb
  int from_left = 0;       ///< 0: the leftmost
  int lanes = 1;           ///< that a car may choose from
  bool by_arrows = false;  ///< by the arrows of the map
};
/// By the arrows mapped on a stretch, else as the Highway Code teaches (rules 143, 179 to 186): the near
/// lane, the far one to turn to the far side or to go all the way round. Bus lanes are left out.
LaneChoice lane_choice(const road::Roads& roads, StretchId stretch, road::Movement movement);

}  // namespace loopwright::draw
