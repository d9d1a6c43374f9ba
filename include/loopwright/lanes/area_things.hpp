// Everything with hours in an area, each thing once, however many pieces of road it lies on.
//
//   for (const AreaThing& one : things_in(roads, setting)) print(one.thing.street, one.length_m);
//
// Rules: roads that touch, are driven on from one into the next and of which all that is told is the
// same are one thing. Where the same holds for both directions it is one thing for both ways. Sorted
// by kind of thing, street and object. The rows of its thing mean nothing.
// Why: mappers split a street at each crossing, and an instructor sees one bus lane.
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/lanes/timed_things.hpp"

namespace loopwright::lanes {

struct AreaThing {
  TimedThing thing;
  std::vector<StretchId> stretches;  ///< in driving order; of a turn the path of its rule
  std::vector<std::int64_t> ways;    ///< ascending, each once; of a turn none
  double length_m = 0;               ///< of road, one way counted; of a turn 0
  bool both_ways = false;            ///< it holds for both directions of its roads
};

std::vector<AreaThing> things_in(const road::Roads& roads, const hours::Setting& setting);

/// The compass direction in which one drives along it, "north-east"; empty for both ways and turns.
std::string_view heading_words(const road::Roads& roads, const AreaThing& one);

}  // namespace loopwright::lanes
