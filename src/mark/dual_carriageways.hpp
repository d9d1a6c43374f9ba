// Which roads are one side of a dual carriageway, by tag or by their partner beside them.
//
// Rules: private to mark. Needs piece_flag::one_way and ring; sets dual and dual_inferred.
#pragma once

#include <string>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// "dual_carriageway=yes" or what else says so; empty when no tag does.
std::string dual_tag(const Tags& tags);

void find_dual_carriageways(Draft& draft);

}  // namespace loopwright::mark
