// What to brief with each row: the places it passes, the road it leads to, the limits.
#pragma once

#include <vector>

#include "loopwright/say/say.hpp"
#include "loopwright/say/words.hpp"
#include "say/moments.hpp"

namespace loopwright::say {

/// Fills new_limit, briefs, hazards and hardness. Rules: rows[k] is that of moments[k].
void add_briefing(const Drive& drive, const std::vector<Moment>& moments, const Words& words,
                  std::vector<Row>& rows);

}  // namespace loopwright::say
