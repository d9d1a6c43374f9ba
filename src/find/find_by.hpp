// find_loops with work of one's own.
//
//   FindWork work = work_of(effort);   work.bound.nodes = 0;   find_loops_by(roads, wish, setting, effort, work);
#pragma once

#include "find/certify.hpp"
#include "find/find_work.hpp"
#include "loopwright/find/find.hpp"

namespace loopwright::find {

/// As find_loops. A lesson in parts takes the work of the effort (lesson_search.hpp).
FindResult find_loops_by(const road::Roads& roads, const wish::Wish& wish,
                         const hours::Setting& setting, Effort effort, const FindWork& work);

}  // namespace loopwright::find
