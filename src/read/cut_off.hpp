// Leaves out what can't be driven into and out of again.
#pragma once

#include "loopwright/mark/draft.hpp"

namespace loopwright::read {

/// Takes drivable from stretches outside the main network, sets cut_off, counts them and drops
/// their turns. Rules: turns are laid out.
void shut_cut_off(mark::Draft& draft);

}  // namespace loopwright::read
