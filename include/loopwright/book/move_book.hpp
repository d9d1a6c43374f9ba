// Pupils of one book copied into another: from an instructor's file to a school's server, and back.
//
//   const Moved moved = move_book(Book::open("wren.book", …), school);
//
// Rules: all in one step, or nothing; every row is read back and compared before it counts. What one sees in the first
// book is copied: of a school's, an instructor's own pupils. A pupil whose code the second book has already is refused,
// so that nothing is ever there twice. What was seen on the ground goes along; of two sightings of a fact the later one
// stays. The ledger's lines that are nobody's any more go from a file to a server, and stay with the school on the way
// back. The first book is left as it is. Throws InputError.
#pragma once

#include "loopwright/book/book.hpp"

namespace loopwright::book {

struct Moved {
  int pupils = 0;
  int rows = 0;  ///< of all tables
};
Moved move_book(const Book& from, Book& to);

}  // namespace loopwright::book
