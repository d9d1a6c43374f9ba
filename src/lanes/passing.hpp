// The time in which we are beside a lane, in whole minutes.
#pragma once

#include "loopwright/base/instant.hpp"

namespace loopwright::lanes {

struct Passing {
  Instant from, to;
};

/// The least interval of whole minutes that holds the one given: widened, never narrowed.
Passing whole_minutes(const Instant& from, const Instant& to);

}  // namespace loopwright::lanes
