// Lay-bys and bays beside a road, as mapped by themselves.
#pragma once

#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// Adds a pull-up place for each, on the stretch it lies beside.
void add_lay_bys(Draft& draft, const road::Roads& roads, std::vector<road::PullUp>& found);

}  // namespace loopwright::mark
