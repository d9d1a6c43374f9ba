// Which kind of roundabout a ring is, and the tag that says so.
#pragma once

#include <string>
#include <vector>

#include "arms.hpp"
#include "rings.hpp"

namespace loopwright::mark {

struct RingKind {
  road::Kind kind = road::Kind::roundabout;
  std::string tag;
  OsmObject source;
};

RingKind ring_kind(const Draft& draft, const road::Roads& roads, const Ring& ring,
                   const std::vector<JunctionArm>& arms);

}  // namespace loopwright::mark
