// The exits of a ring or mini as an eye counts them: every road one could leave by, the one taken
// included. Signs count arms, and may count a slip road and its road as one.
#pragma once

#include <vector>

#include "say/moments.hpp"

namespace loopwright::say {

struct ExitSeen {
  int count = 0;                  ///< its number from the entry on; -1: a small road off a mini
  std::vector<StretchId> passed;  ///< the exits before it
  bool small = false;  ///< a small road off a ring of bigger ones: only small roads are counted
};

/// Rules: the moment is that of a roundabout or mini with a pass.
ExitSeen exit_seen(const Drive& drive, const Moment& moment);

}  // namespace loopwright::say
