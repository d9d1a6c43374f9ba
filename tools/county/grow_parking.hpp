// A car park beside a street: its surface, a way in, and aisles between rows of bays.
#pragma once

#include "county/grow_trace.hpp"

namespace loopwright::county {

/// Draws one at a start, as large as there is room for; false when there is none.
bool put_parking(Ground& ground, const Start& start, Dice& dice);

}  // namespace loopwright::county
