// What an instructor looks up when the lesson runs late or goes wrong: ways home, places to pull up.
#pragma once

#include "card/flow.hpp"
#include "card/sections.hpp"

namespace loopwright::card {

void add_late(Flow& flow, const PageStyle& style, const Subject& subject);

}  // namespace loopwright::card
