// Problems made by dice, and what the best of the small ones is, by trying every walk.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "loopwright/circuit/problem.hpp"

namespace made {

/// Shortens legs until none is longer than one through a pass.
void close_legs(loopwright::circuit::Problem& problem);

struct Small {
  bool several_goals = false, least = false, spacing = false, caps = false;
  bool steps = false;  ///< legs take only some times (Problem::longer)
};
/// Up to 4 entries and 6 passes, up to about 7 passes in the time.
loopwright::circuit::Problem small(std::uint64_t seed, Small kind);

struct Best {
  bool possible = false;   ///< some walk meets every `least` in time
  std::int64_t value = 0;  ///< of the best of these
};
/// Every order of passes, each with and without waiting for the spacing of its goals, no longer than it must.
Best by_trying_all(const loopwright::circuit::Problem& problem);

struct Towns {
  int towns = 3, roundabouts = 48;
  std::int64_t most_ms = 3'600'000, spacing_ms = 0;
  std::vector<std::int64_t> worths = {1000, 700, 500, 300, 200, 100};
};
/// Roundabouts of 3 or 4 arms in clustered towns, streets from each arm to each; a group for each place and
/// movement. About 3.5 entries and 8.5 passes a roundabout.
loopwright::circuit::Problem towns(std::uint64_t seed, const Towns& plan);

}  // namespace made
