// What the words of a wish say, as a wish: all but its places, its start and what a ledger or a file of terms adds.
#pragma once

#include "command/arguments.hpp"
#include "command/wish_words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// What --minutes takes: shorter is no lesson, longer no day's work; both far inside what the search can bear.
inline constexpr Between minutes_of_drive{10, 600};

/// Throws UsageError, or InputError for a word of a wish file.
wish::Wish wish_of(const WishWords& words);

}  // namespace loopwright::command
