// Which ways of the raw map become road, and what a learner's car may do on each.
#pragma once

#include <vector>

#include "loopwright/mark/rules.hpp"
#include "loopwright/read/build.hpp"

namespace loopwright::read {

struct Road {
  const mark::RawWay* way = nullptr;
  road::RoadClass road_class = road::RoadClass::road;
  mark::CarAccess access;
};

/// In the order of raw.ways. What is left out is counted in the report. The raw map must outlive
/// the result.
std::vector<Road> select_roads(const mark::RawMap& raw, const BuildOptions& options,
                               road::Report& report);

}  // namespace loopwright::read
