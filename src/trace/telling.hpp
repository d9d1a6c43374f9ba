// What of a recorder's fixes tells of the way: means of a few seconds each, without those that are nearer to the one
// before than the noise.
#pragma once

#include <span>
#include <vector>

#include "loopwright/trace/match.hpp"

namespace loopwright::trace {

/// A mean of some fixes.
struct Telling {
  Point at;
  double unix_s = 0;
  double silent_s = 0;  ///< the longest the recorder was silent since the one before
  std::size_t row = 0;  ///< of the first fix in it
};

std::vector<Telling> telling_in(std::span<const Fix> fixes, const Noise& noise);

}  // namespace loopwright::trace
