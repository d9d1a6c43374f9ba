// Where on the roads the car may have been at a fix.
#pragma once

#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/trace/recording.hpp"

namespace loopwright::trace {

/// A place on a stretch: metres from where it is entered.
struct Candidate {
  StretchId stretch;
  double along_m = 0, off_m = 0;
  int other_way = -1;  ///< index of the same place driven the other way; -1: one-way
};

/// Within radius_m, the nearest first; of a piece that comes near twice both places. At most `most_candidates`.
std::vector<Candidate> candidates_at(const road::Roads& roads, Point at, double radius_m);
inline constexpr std::size_t most_candidates = 64;

}  // namespace loopwright::trace
