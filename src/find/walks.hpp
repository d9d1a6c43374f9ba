// Drives along the walks of the passage graph that are worth most.
//
// Method: a walk is looked for with legs that spare quiet streets, and driven. The streets that it then wears
// out are made dearer, and another is looked for; a few times. Last, bounding the value may come to a
// better walk, which is driven too.
#pragma once

#include <vector>

#include "find/builder.hpp"
#include "find/certify.hpp"
#include "find/find_work.hpp"

namespace loopwright::find {

/// A drive along one good walk, within the caps and the minutes, as far as the tries allow.
Plan plan_along_walk(const Hunt& hunt, Builder& builder, int rounds, const Liking& liking);

/// All of them; at least one. Bounds the value by the way.
std::vector<Plan> plans_along_walks(const Hunt& hunt, Builder& builder, Certifier& certifier,
                                    const FindWork& work);

}  // namespace loopwright::find
