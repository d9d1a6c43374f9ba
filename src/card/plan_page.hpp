// The first page of a lesson on paper: what for, in what order, what to know before one sets off.
#pragma once

#include "card/flow.hpp"
#include "card/head.hpp"

namespace loopwright::card {

void add_plan(Flow& flow, const PageStyle& style, const Subject& subject, const Head& head);

}  // namespace loopwright::card
