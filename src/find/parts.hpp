// Lessons in parts, easy first, or with roads that the instructor drives: what find_loops does for them.
//
// Rules: wish::is_in_parts(wish), and it has minutes. As of find_loops. No bound is claimed.
#pragma once

#include "loopwright/find/find.hpp"

namespace loopwright::find {

FindResult find_lessons(const road::Roads& roads, const wish::Wish& wish,
                        const hours::Setting& setting, Effort effort);

}  // namespace loopwright::find
