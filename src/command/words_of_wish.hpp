// A wish in words again: what a loop file asks for, as the command line would have said it.
//
//   WishWords words = words_of(answer.wish, "4 Lantern Row", "loops.json");
//
// Rules: all but start, terms, ledger and how many loops: those are the day's. Places are written as LAT,LON, for the
// file keeps no words of them, but for home and for single places kept off, which keep their names.
#pragma once

#include <string>

#include "command/wish_words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// home: what the book or the instructor calls the wish's home. from: where the words come from, for refusals.
WishWords words_of(const wish::Wish& wish, const std::string& home, const std::string& from);

}  // namespace loopwright::command
