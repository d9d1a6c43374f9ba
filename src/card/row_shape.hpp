// The small drawing beside an entry of a card.
#pragma once

#include "card/entries.hpp"
#include "loopwright/draw/sketch.hpp"

namespace loopwright::card {

/// Rules: a row or a stop.
draw::Picture shape_of(const Subject& subject, const Entry& entry, draw::Size size);

}  // namespace loopwright::card
