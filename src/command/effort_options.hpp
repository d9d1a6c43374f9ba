// How hard to look for loops, as options of the commands that look: --quick, --soon and --thorough.
//
//   add_effort(app, texts.effort);   …   ask.effort = effort_of(texts.effort);
#pragma once

#include "command/options.hpp"
#include "loopwright/find/find.hpp"

namespace loopwright::command {

/// The flags, as typed; at most one of them.
struct EffortTexts {
  bool quick = false, soon = false, thorough = false;
};
void add_effort(Options& app, EffortTexts& texts);
/// find::Effort::usual when none is said.
find::Effort effort_of(const EffortTexts& texts);

}  // namespace loopwright::command
