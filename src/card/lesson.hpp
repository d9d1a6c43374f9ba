// What a sheet says of a lesson in parts, and before and behind what of it.
#pragma once

#include <string>
#include <vector>

#include "card/seats.hpp"
#include "card/sections.hpp"

namespace loopwright::card {

/// What begins before a row: that the instructor drives out and the seats are changed, "PART 2: 30 min, busier roads: …".
std::vector<Band> bands_before(const Subject& subject, std::size_t row);

/// All that was got, that of the parts in their order.
std::vector<wish::Met> all_met(const wish::Loop& loop);

}  // namespace loopwright::card
