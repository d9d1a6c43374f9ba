// What a wish forbids: stretches and turns that would make an avoided pass, or one too hard.
#pragma once

#include "find/caps.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// True when this pass may not be in the loop.
bool is_unwanted(const wish::Wish& wish, const Caps& caps, const road::Chance& chance);
/// True when this run of road may not be.
bool is_unwanted(const wish::Wish& wish, const Caps& caps, const road::RunFact& fact);

/// Shuts stretches and turns in the costs.
void apply_bans(const road::Roads& roads, const wish::Wish& wish, const Caps& caps,
                reach::Costs& costs);

}  // namespace loopwright::find
