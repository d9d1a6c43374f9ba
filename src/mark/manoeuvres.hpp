// Spots to stop at and practise: what the rules for each kind of manoeuvre share.
#pragma once

#include <vector>

#include "loopwright/mark/draft.hpp"
#include "pull_up_rules.hpp"

namespace loopwright::mark {

/// A part of a stretch to practise on, in metres from where the stretch is entered.
struct PracticeSpot {
  road::Kind kind = road::Kind::move_off;
  StretchId stretch;
  double from_m = 0, to_m = 0;
  TextId tag;  ///< what says so
  [[nodiscard]] double metres() const { return to_m - from_m; }
};

/// Adds the place and chance of a spot beside its stretch.
void add_spot(Draft& draft, const road::Roads& roads, const PracticeSpot& spot);

/// Car parks to practise bay parking in: a place each, at its way in from the road.
void mark_car_parks(Draft& draft, const road::Roads& roads, const PullUpRules& rules);

}  // namespace loopwright::mark
