// Road that every drive of a wish must drive twice: what a certificate says of wishes without "max".
#pragma once

#include "find/hunt.hpp"

namespace loopwright::find {

/// Metres that no drive of the wish inside its time window can save: a drive over a road that is the only
/// way to something the wish needs comes back over it. A lower bound; 0 says nothing.
double forced_twice_m(const Hunt& hunt);

}  // namespace loopwright::find
