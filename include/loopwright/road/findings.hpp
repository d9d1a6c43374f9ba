// What a map was found to hold, object by object: for the report of a build and for whoever wants
// to check it against the raw map.
//
//   for (const Finding& f : findings(roads)) say(name(f.kind), f.object, roads.text(f.tag));
#pragma once

#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::road {

struct Finding {
  Kind kind = Kind::roundabout;
  OsmObject object;  ///< the map object that says so
  TextId tag;        ///< what it says, or the rule that infers it
  Confidence confidence = Confidence::certain;
  Point at;
  double length_m = 0;  ///< road of this finding, for runs; 0 otherwise
};

/// Every kind that some object says is there, each (kind, object, tag, confidence) once, in this
/// order. A place none of whose ways through a learner may drive is a finding too.
std::vector<Finding> findings(const Roads& roads);

}  // namespace loopwright::road
