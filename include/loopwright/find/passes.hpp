// Which practice chances a drive passes: each once, under its most special kind. A manoeuvre is
// passed only where the drive stops for it.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
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

/// A stop planned at a place to pull up: on which of the drive's stretches, and which row of
/// roads.pull_ups.
struct PlannedPullUp {
  std::size_t at = 0;
  std::uint32_t place = 0;
  std::int64_t stay_ms = 0;
  bool talk = false;  ///< else a brief
};

/// A drive through the graph. The first stretch is driven from `start_m`, the last to `end_m`,
/// both in metres from where the stretch is entered.
struct Drive {
  std::vector<StateId> states;
  double start_m = 0;
  double end_m = 0;
  std::vector<PlannedStop> stops = {};       ///< by `at`, at most one each
  std::vector<PlannedPullUp> pull_ups = {};  ///< in driving order, each place once
  /// First and last of the stretches the learner drives; none: all.
  std::optional<std::array<std::size_t, 2>> practice = {};
  int unplaced = 0;  ///< planned stops for which there is no place to pull up on it
};

/// Metres driven on the i-th stretch.
double driven_m(const road::Roads& roads, const Drive& drive, std::size_t i);

/// A pass and the place it is counted at.
struct PlacePass {
  wish::Pass pass;
  PlaceId place;
  std::int64_t begins_ms = 0;  ///< likely, since the start of the drive; 0 until it is timed
};

/// In driving order.
std::vector<PlacePass> passes_of(const road::Roads& roads, const Drive& drive);

}  // namespace loopwright::find
