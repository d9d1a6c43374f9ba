// Where the signs of the way taken lead.
#pragma once

#include <string>

#include "say/moments.hpp"

namespace loopwright::say {

/// "Stavely, A41", as the signs on the road entered say; empty when none are mapped.
std::string signed_to(const Drive& drive, const Moment& moment);

}  // namespace loopwright::say
