// The sort of road a stretch is, as a pupil's record tells roads apart.
#pragma once

#include <array>
#include <string_view>

#include "loopwright/road/roads.hpp"

namespace loopwright::road {

/// Every sort there is, the easiest first (common practice, no source).
inline constexpr std::array<std::string_view, 5> all_sorts{"quiet", "town", "country",
                                                           "dual carriageway", "motorway"};

/// One of all_sorts. Quiet: a quiet residential street (piece_flag::quiet); town: whatever else is none of the others.
std::string_view sort_of(const Roads& roads, StretchId stretch);

}  // namespace loopwright::road
