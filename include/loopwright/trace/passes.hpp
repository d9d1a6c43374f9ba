// What a matched drive passed: the chances of the map, by which movement and when.
//
//   for (const TracedPass& one : passes_of(roads, match.runs[0])) use(one.pass.kind, one.pass.movement, one.from_s);
//
// Rules: pure. Passes are those of room find, so that a drive and a plan are counted alike. Manoeuvres show in no fix:
// one that was planned counts as done where the car stood long enough by its place, or turned round there.
#pragma once

#include <span>
#include <vector>

#include "loopwright/trace/match.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::trace {

struct TracedPass {
  wish::Pass pass;              ///< first and last: indices into the run's legs
  double from_s = 0, to_s = 0;  ///< when its first leg is entered, and its last
  bool seen = true;             ///< false: part of it lies where nothing was recorded
};

/// planned: passes of a plan; only its manoeuvres count.
std::vector<TracedPass> passes_of(const road::Roads& roads, const Run& run,
                                  std::span<const wish::Pass> planned = {});

}  // namespace loopwright::trace
