// The chosen places of a car as the stretches it drove.
#pragma once

#include <span>
#include <vector>

#include "loopwright/trace/match.hpp"
#include "trace/chain.hpp"
#include "trace/router.hpp"
#include "trace/telling.hpp"

namespace loopwright::trace {

/// How far along a run the car was at a fix.
struct Reached {
  std::size_t fix = 0;
  double progress_m = 0;
};

struct Way {
  std::vector<Leg> legs;         ///< without times
  std::vector<double> begins_m;  ///< how far along the run each leg begins
  std::vector<Reached> reached;  ///< in order, never going back
  std::size_t end_row = 0;       ///< behind the last fix of the run
};

/// Legs of a chain, the ways between its places found again.
Way way_of(Router& router, const Noise& noise, std::span<const Telling> fixes,
           std::span<const Chosen> chosen);

/// The way as a line. Rules: some leg.
std::vector<Point> line_of(const road::Roads& roads, std::span<const Leg> legs);

}  // namespace loopwright::trace
