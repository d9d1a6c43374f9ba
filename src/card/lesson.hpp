// What a sheet says of a lesson in parts, and of the roads that the instructor drives.
#pragma once

#include <string>
#include <vector>

#include "card/sections.hpp"

namespace loopwright::card {

/// The row is of roads that the instructor drives: it needs no words.
bool is_instructors(const wish::Loop& loop, const say::Row& row);

/// "You drive to Mill Road: 6 min", "PART 2: 30 min, busier roads: …", of what begins before a row.
std::vector<std::string> lines_before(const Subject& subject, std::size_t row);
/// "You drive back from Mill Road: 6 min", behind the last row; empty when the learner drives home.
std::string line_behind(const Subject& subject);

/// All that was got, that of the parts in their order.
std::vector<wish::Met> all_met(const wish::Loop& loop);

}  // namespace loopwright::card
