// What `school` does in the night.
#pragma once

#include "loopwright/command/command.hpp"

namespace loopwright::command {

Exit school_propose(const Arguments& words);

}  // namespace loopwright::command
