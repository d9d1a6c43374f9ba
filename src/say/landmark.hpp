// Where to look for a junction: the thing near it that an instructor can point at.
#pragma once

#include <string>

#include "loopwright/say/words.hpp"
#include "say/moments.hpp"

namespace loopwright::say {

/// "after the church", "by the Red Lion"; at most five words, empty when nothing is plain enough.
std::string landmark_for(const Drive& drive, const Moment& moment, const Words& words);

}  // namespace loopwright::say
