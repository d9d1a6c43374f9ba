// Days at which the law is asked when no lesson's date is known, as while building an area.
//
// Rules: private to mark.
#pragma once

#include "loopwright/base/instant.hpp"

namespace loopwright::mark {

inline constexpr Date first_day{1, 1, 1};        ///< before any change of law we know
inline constexpr Date newest_day{9999, 12, 31};  ///< after all of them

}  // namespace loopwright::mark
