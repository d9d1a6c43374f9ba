// How a book of an older version becomes one of this: the statements of each step.
#pragma once

#include <span>

namespace loopwright::book {

/// The k-th brings version k to version k + 1; version 0 is an empty file.
std::span<const char* const> migrations();

}  // namespace loopwright::book
