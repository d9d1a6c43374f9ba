// A copy of the book, and the book again from such a copy.
//
//   back_up(book, "/usb/pupils.2026-11-28.book");   restore(book, "/usb/pupils.2026-11-28.book");
//
// Rules: a copy is one file, for its owner alone (0600), whole as of one moment though others write meanwhile, and read
// through before it takes its name; a file of that name is replaced in one step. Restoring reads the copy through first,
// and puts all of it in the place of what the book has, or nothing. Copies hold whom they held: erasing a pupil doesn't
// reach them. Throws InputError in one line.
// Source: sqlite.org/backup.html.
#pragma once

#include <filesystem>
#include <functional>

#include "loopwright/book/book.hpp"

namespace loopwright::book {

void back_up(const Book& book, const std::filesystem::path& copy);
/// before_it: called once the copy was read through, before the book is touched.
void restore(
    Book& book, const std::filesystem::path& copy, const std::function<void()>& before_it = [] {});

}  // namespace loopwright::book
