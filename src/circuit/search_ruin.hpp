// Takes items out of a walk.
//
// Method (Schrimpf and others 2000, "Record breaking optimization results using the ruin and recreate
// principle"; strings after Christiaens and Vanden Berghe 2020; both from memory): one of
// 1. a string of neighbours in driving order,
// 2. a string with some kept inside it,
// 3. two strings, the second beginning near the first by road,
// 4. single ones at random,
// 5. those that bring least worth for their time.
#pragma once

#include <vector>

#include "circuit/search_tour.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::circuit {

/// Takes at least one item out of a walk that has any.
void ruin(const Items& items, std::vector<Visit>& visits, Dice& dice);

}  // namespace loopwright::circuit
