// Bus lanes as runs: where lanes touch of which not the same holds at all hours, one ends and another begins.
//
//   for (const RunFamily& family : parted_by_lanes(roads, members)) …
//
// Rules: private to mark. Members are beside a bus lane, by stretch, each once. Two lanes are alike when
// their hours, as written, are, and both or neither are in doubt, of unknown direction, against the traffic.
// Why: a run is one lane to whoever asks for it, and has one verdict; on a lane that is in force all day and
// another that is for an hour there is none.
#pragma once

#include <vector>

#include "run_kinds.hpp"

namespace loopwright::mark {

/// At least one family, in the order of their first members.
std::vector<RunFamily> parted_by_lanes(const road::Roads& roads,
                                       const std::vector<RunMember>& members);

}  // namespace loopwright::mark
