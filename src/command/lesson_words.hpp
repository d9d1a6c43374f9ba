// The words of a lesson in parts: --part, --easy-first, --drive-out, --drive-back.
#pragma once

#include "command/wish_words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// Its parts, and whether it is to be easy first. Throws UsageError.
void read_parts(wish::Wish& wish, const WishWords& words);

/// The minutes of a lesson whose parts say them: their sum and the reserve; none without parts.
std::optional<int> minutes_of_parts(const wish::Wish& wish, int reserve_minutes);

/// Throws UsageError when the words say what can't be together. Rules: all else of the wish is read, but its places.
void check_lesson(const wish::Wish& wish, const WishWords& words);

}  // namespace loopwright::command
