// What an instructor's note speaks of, by the proof's own measure.
#pragma once

#include <string>

#include "loopwright/proof/proof.hpp"

namespace loopwright::proof {

/// True when some point of the note lies within reach of the stretch's road.
bool in_reach(const road::Roads& map, const road::Note& note, StretchId stretch);

/// True when the note, beyond doubt, speaks of this stretch: a point whose nearest road it is, a line
/// of which 30 m or more have it as their nearest, and driven in a direction the note means.
bool speaks_of(const road::Roads& map, const road::Note& note, StretchId stretch);

}  // namespace loopwright::proof
