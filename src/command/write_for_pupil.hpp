// A file that is written for a pupil: the book knows of it before it is there, so that erasing the pupil finds it, and
// nobody but its owner may read it.
#pragma once

#include <filesystem>
#include <string>

#include "loopwright/book/book.hpp"

namespace loopwright::command {

struct LessonName {
  std::string code;
  int number = 0;  ///< 0: of no lesson
};

/// Throws InputError.
void write_for_pupil(book::Book& book, const LessonName& lesson, const std::filesystem::path& file,
                     const std::string& bytes);

}  // namespace loopwright::command
