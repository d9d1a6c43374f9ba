// Whether a request is answered by running this program once more, and not from what is at hand.
//
// Rules: by its address alone; what isn't known here takes long, so that a new address holds up no tile.
#pragma once

#include "page/request.hpp"

namespace loopwright::page {

bool takes_long(const Request& request);

}  // namespace loopwright::page
