// Where a drive left its plan, and came back to it.
//
//   for (const Departure& one : departures(roads, plan, match.runs)) use(one.driven_m, one.missed_m);
//
// Method: what plan and drive have in common, in order, is their longest common subsequence by length of road (R. A.
// Wagner and M. J. Fischer 1974); what lies between is a departure.
// Rules: pure. Short differences, which are noise or the two ends, are none (`least_departure_m`).
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/trace/match.hpp"

namespace loopwright::trace {

/// Shorter differences aren't told. Ours.
inline constexpr double least_departure_m = 100;

/// A leg of a drive of several runs.
struct LegName {
  std::size_t run = 0, leg = 0;
};

struct Departure {
  std::optional<LegName> left;  ///< the last leg on the plan before it; none: it began elsewhere
  std::optional<LegName> came_back;          ///< the next leg on the plan; none: it ended elsewhere
  std::size_t plan_first = 0, plan_end = 0;  ///< rows of the plan left out, the last not included
  double driven_m = 0;                       ///< beside the plan
  double missed_m = 0;                       ///< of the plan
  bool unseen = false;  ///< the drive isn't known all along: the plan may have been driven
};

struct Comparison {
  std::vector<Departure> departures;  ///< in driving order
  double on_plan_m = 0;               ///< driven as planned
};

Comparison compared(const road::Roads& roads, std::span<const StretchId> plan,
                    std::span<const Run> runs);

}  // namespace loopwright::trace
