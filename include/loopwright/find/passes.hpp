// Which practice chances a drive passes: each once, under its most special kind. A manoeuvre is
// passed only where the drive stops for it.
#pragma once

#include <span>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// A manoeuvre done on the way: on which of the drive's stretches, and at which spot.
struct PlannedStop {
  std::size_t at = 0;
  ChanceId chance;
};

/// A drive through the graph. The first stretch is driven from `start_m`, the last to `end_m`,
/// both in metres from where the stretch is entered.
struct Drive {
  std::vector<StateId> states;
  double start_m = 0;
  double end_m = 0;
  std::vector<PlannedStop> stops = {};  ///< by `at`, at most one each
};

/// Metres driven on the i-th stretch.
double driven_m(const road::Roads& roads, const Drive& drive, std::size_t i);

/// A pass and the place it is counted at.
struct PlacePass {
  wish::Pass pass;
  PlaceId place;
};

/// In driving order.
std::vector<PlacePass> passes_of(const road::Roads& roads, const Drive& drive);

}  // namespace loopwright::find
