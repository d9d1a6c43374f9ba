// The sheet that is written on after the lesson: what was practised, how much help it took, what comes next.
#pragma once

#include "card/flow.hpp"
#include "card/sections.hpp"

namespace loopwright::card {

void add_after(Flow& flow, const PageStyle& style, const Subject& subject);

}  // namespace loopwright::card
