// Which roads count as roads to a driver reading the signs, and which way their traffic goes.
#pragma once

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// Roads the signs count: no service road, nothing closed to the public. Access-only roads count.
bool is_public(const road::Piece& piece);

/// True when traffic may drive this way, our learner's car or not: a private road's own traffic
/// does, and that of a road we keep off; a bus gate's or a one-way street's wrong way isn't.
bool traffic_takes(const Draft& draft, StretchId stretch);

}  // namespace loopwright::mark
