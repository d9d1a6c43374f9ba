// What a wish forbids: stretches and turns that would make an avoided pass, or one too hard.
#pragma once

#include "find/caps.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// True when a pass of this kind and hardness may not be in the loop.
bool is_unwanted(const wish::Wish& wish, const Caps& caps, road::Kind kind, int hardness);

/// Shuts stretches and turns in the costs.
void apply_bans(const road::Roads& roads, const wish::Wish& wish, const Caps& caps,
                reach::Costs& costs);

}  // namespace loopwright::find
