// What of a wish a ground gives at least, counted cheaply: for telling what is in its way.
//
// Rules: all are asked of any ground of the same wish; more walls never make them greater.
#pragma once

#include <optional>

#include "find/in_the_way.hpp"

namespace loopwright::find {

/// Places of a want that can be driven to, through and to the end within most_ms, up to `enough`.
Worth places_within(const wish::Want& want, std::int64_t most_ms, int enough);

/// 0: home or end is shut; 1: it isn't; 2: and the roads that fit between them within most_ms are at
/// least least_ms long, so that a lesson has room.
Worth room_for(std::int64_t least_ms, std::int64_t most_ms);

/// Least time from home to the end; empty when there is no way.
std::optional<std::int64_t> least_ms_to_end(const Ground& ground);
/// 1: the end can be reached within most_ms.
Worth end_within(std::int64_t most_ms);

/// The most that a wish's drives may take, or longer than any when it names no minutes.
std::int64_t most_ms_of(const wish::Wish& wish);

}  // namespace loopwright::find
