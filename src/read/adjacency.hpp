// Which stretches leave a node, and where a driver may turn round.
#pragma once

#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::read {

/// Fills node_first and node_out: every stretch that leaves a node, drivable or not, ascending.
void list_leaving(road::Tables& tables);

/// Sets node_flag::dead_end: at walls, and where a single piece of road that is not private ends.
/// cut: nodes where the road only seems to end, since the extract does.
void find_dead_ends(mark::Draft& draft, const std::vector<bool>& cut);

}  // namespace loopwright::read
