// How many minutes a wish needs at least, and which want costs how many of them.
#pragma once

#include <optional>
#include <vector>

#include "find/hunt.hpp"

namespace loopwright::find {

struct LeastNeeded {
  /// No drive that does all that is wanted by number takes less, its manoeuvres counted; none: not known.
  std::optional<double> at_least_minutes;
  /// How many of them go when one want is left out; only where both are known exactly.
  std::vector<wish::WantCost> costs;
};

/// Of the wish's wants with a number for junctions and manoeuvres, which others can only add to: at the
/// likely times, as if no clock shut anything.
LeastNeeded least_needed(const Ground& ground);

}  // namespace loopwright::find
