// Independent driving: the stretch of a finished loop on which the learner finds the way.
//
//   if (const auto found = independent_on(roads, loop, 15)) loop.independent = {found->stretch};
//
// Rules: the loop is described, and knows its pull-ups and which of it counts as practice.
#pragma once

#include <optional>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

struct FoundIndependent {
  wish::IndependentStretch stretch;
  double seconds = 0;  ///< likely driving; stops aren't counted
  bool whole = false;  ///< as many minutes as asked
};

/// The best stretch of so many minutes, or the longest there is when none has as many; none: the loop
/// lies inside junctions altogether.
std::optional<FoundIndependent> independent_on(const road::Roads& roads, const wish::Loop& loop,
                                               int minutes);

/// Fills loop.independent when the wish asks for it, and tells what it falls short of.
void add_independent(const road::Roads& roads, const wish::Wish& wish, wish::Loop& loop,
                     std::optional<wish::Shortfall>& shortfall);

}  // namespace loopwright::find
