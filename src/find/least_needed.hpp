// How many minutes a wish needs at least, and which want costs how many of them.
#pragma once

#include <optional>
#include <vector>

#include "find/hunt.hpp"

namespace loopwright::find {

struct LeastNeeded {
  /// No drive that passes all that is wanted by number takes less; none: not known.
  std::optional<double> at_least_minutes;
  /// How many of them go when one want is left out; only where both are known exactly.
  std::vector<wish::WantCost> costs;
};

/// Of the wish's wants with a number, at the likely times and the walls of this ground.
LeastNeeded least_needed(const Ground& ground);

}  // namespace loopwright::find
