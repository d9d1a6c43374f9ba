// Whether one may be told the limit of a road.
#pragma once

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::say {

/// False on a service road whose limit isn't mapped. By the law it is that of any road without lamps, 60 perhaps, and
/// said like that it misleads: such a road is driven slowly, and no sign of it is there to be looked for (common
/// practice, no source). Rules: the loop is resolved on these roads.
inline bool tells_limit(const road::Roads& roads, StretchId stretch,
                        road::LimitConfidence confidence) {
  return road::is_sure(confidence) || roads.piece(stretch).road_class != road::RoadClass::service;
}
inline bool tells_limit(const road::Roads& roads, const wish::LoopStretch& driven) {
  return tells_limit(roads, driven.stretch, driven.limit.confidence);
}

}  // namespace loopwright::say
