// An empty book in the store that is being tested.
#pragma once

#include <filesystem>

#include "loopwright/book/book.hpp"

namespace loopwright::test {

/// file: where it is made, unless LOOPWRIGHT_TEST_BOOK names a server's; that one is emptied by its owner, at
/// LOOPWRIGHT_TEST_OWNER.
book::Book empty_book(const std::filesystem::path& file);

}  // namespace loopwright::test
