// Where the limit changes, once notes have changed limits.
#pragma once

#include <span>

#include "overlay.hpp"

namespace loopwright::mark {

/// The limit changes at both ends of these stretches are looked for again. Rules: their limits are
/// changed already; in order, each once.
void change_limit_changes(Overlay& over, const road::LimitLaw& law,
                          std::span<const StretchId> changed);

}  // namespace loopwright::mark
