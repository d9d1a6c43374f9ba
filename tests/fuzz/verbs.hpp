// Runs a command as the program does, without its words on the terminal.
#pragma once

#include "loopwright/command/command.hpp"

namespace loopwright::fuzz {

/// The verb's name, then its words. A refusal is checked; a false claim in what `loops` made ends the
/// run: it would be our own fault.
void run_verb(const command::Arguments& words);

}  // namespace loopwright::fuzz
