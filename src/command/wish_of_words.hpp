// What the words of a wish say, as a wish: all but its places, its start and what a ledger or a file of terms adds.
#pragma once

#include "command/wish_words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// Throws UsageError, or InputError for a word of a wish file.
wish::Wish wish_of(const WishWords& words);

}  // namespace loopwright::command
