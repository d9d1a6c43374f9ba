// Limits of roads that say nothing themselves but lie among streets of a town.
#pragma once

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// Turns mere guesses of the national limit into the town's limit, still to be checked, where a
/// short road begins and ends at streets of a town. Rules: all limits are marked already.
void settle_limits_among_streets(Draft& draft);

}  // namespace loopwright::mark
