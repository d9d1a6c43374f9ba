// Turn restrictions of the map, resolved to the stretches they speak of.
#pragma once

#include "loopwright/mark/draft.hpp"

namespace loopwright::read {

/// Fills turn_rules and rule_path. Those that can't be used are counted and listed.
/// Rules: nodes, pieces, stretches, node_first and node_out are done.
void resolve_turn_rules(mark::Draft& draft);

}  // namespace loopwright::read
