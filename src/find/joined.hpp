// Chances that lead into another kind: what a joined want asks for.
#pragma once

#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::find {

/// Ways that drive the chance and then so far into the second kind that a pass of that is made as well;
/// the shortest each, a few at most. Empty: it doesn't lead into one. Rules: `into` is no manoeuvre.
std::vector<std::vector<StretchId>> joined_ways(const road::Roads& roads,
                                                const road::Chance& chance, road::Kind into);

}  // namespace loopwright::find
