// A place to begin for a lesson that can't be had from the door, or only by turning the car round: the instructor drives
// there first and home at the end, as one does with a beginner whose door lies among hard roads (common practice, no source).
//
//   if (const auto begin = easier_begin(roads, wish, setting)) …   // with --drive-out and --drive-back there it is met
#pragma once

#include <optional>

#include "loopwright/find/begin_places.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

struct EasierBegin {
  BeginPlace place;
  double there_minutes = 0, back_minutes = 0;  ///< likely; driven by the instructor
  /// Drives over a quiet street that it takes: as many as the ledger lets it have in a day; empty: what the wish allows.
  std::optional<int> street_passes = {};
};

/// One of the nearest from which a first answer meets the wish, if need be with more drives over a quiet street, as beginners
/// go round the same block (common practice, no source); none for a wish that says itself where else the learner begins or
/// ends, which roads are taken, or nothing of what is too hard.
std::optional<EasierBegin> easier_begin(const road::Roads& roads, const wish::Wish& wish,
                                        const hours::Setting& setting);

/// Where a learner can drive longest on roads that the wish lets him, when that is nowhere long enough.
struct LongestRound {
  BeginPlace place;
  double away_minutes = 0;  ///< likely; the instructor's drive there and back
  double minutes = 0;       ///< likely; all its streets as often as the wish lets them be driven
  int street_passes =
      0;  ///< as many as the ledger lets a quiet street be driven in a day; 0: the wish does already
  double most_minutes = 0;  ///< with that many
};

/// None for a wish as above, or where some such roads are long enough.
std::optional<LongestRound> longest_round(const road::Roads& roads, const wish::Wish& wish,
                                          const hours::Setting& setting);

}  // namespace loopwright::find
