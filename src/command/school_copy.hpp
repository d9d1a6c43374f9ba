// What `school` does with a day's copy.
#pragma once

#include "loopwright/command/command.hpp"

namespace loopwright::command {

Exit school_take(const Arguments& words);
Exit school_bring(const Arguments& words);

}  // namespace loopwright::command
