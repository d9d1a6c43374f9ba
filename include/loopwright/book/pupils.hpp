// The pupils of a book.
//
// Rules: codes are told apart without regard to capitals. Throws InputError, also when there is no pupil of a code.
#pragma once

#include <string_view>
#include <vector>

#include "loopwright/book/book.hpp"
#include "loopwright/book/pupil.hpp"

namespace loopwright::book {

/// Rules: is_code(pupil.code). Throws InputError when the code is taken.
void add_pupil(Book& book, const Pupil& pupil);
/// All of it but the code and the day it was added.
void change_pupil(Book& book, const Pupil& pupil);
Pupil pupil_of(const Book& book, std::string_view code);
/// By code.
std::vector<Pupil> pupils_of(const Book& book);

}  // namespace loopwright::book
