// Why a street or a junction that every loop should take isn't taken.
#pragma once

#include <string>

#include "find/by_the_hour.hpp"
#include "find/hunt.hpp"

namespace loopwright::find {

/// "'Fore Street': kept off by 'Mill Street'". Rules: no loop of the search takes it and does the rest.
std::string why_not_taken(const Ground& ground, const wish::Take& take, ByTheHour& clock);

}  // namespace loopwright::find
