// Speed limits that change: by the hour, in the wet, under signs that are switched.
//
// Rules: private to mark. Only of directions that may be driven, once it is known which.
#pragma once

#include <string>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// What the tags of a way say of one direction; an empty text when nothing changes.
struct LimitHours {
  std::string base, text, source;
};
struct BothLimitHours {
  LimitHours along, against;
};
BothLimitHours limit_hours_of(const Tags& tags);

/// Adds the rules of both directions of a piece, whose way says so, to timed_rules.
void keep_limit_hours(Draft& draft, PieceId piece, const BothLimitHours& of_way);

}  // namespace loopwright::mark
