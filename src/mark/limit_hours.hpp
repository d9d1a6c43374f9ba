// Speed limits that change: by the hour, in the wet, under signs that are switched.
//
// Rules: private to mark. Only of directions that may be driven, once it is known which.
#pragma once

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// Adds the rules of both directions of a piece to timed_rules.
void keep_limit_hours(Draft& draft, PieceId piece);

}  // namespace loopwright::mark
