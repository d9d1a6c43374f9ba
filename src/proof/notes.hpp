// What an instructor's note speaks of, by the proof's own measure.
#pragma once

#include <string>

#include "loopwright/proof/proof.hpp"

namespace loopwright::proof {

/// True when some point of the note lies within reach of the stretch's road.
bool in_reach(const road::Roads& map, const road::Note& note, StretchId stretch);

/// True when the note, beyond doubt, speaks of this stretch: a point whose nearest road it is, or a
/// line that runs along it for most of the shorter one (30 m, when it shuts the road).
bool speaks_of(const road::Roads& map, const road::Note& note, StretchId stretch);

}  // namespace loopwright::proof
