// Values as the tables of a book keep them, and what several of its sources look up.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "book/database.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::book {

using road::day_text;  // "2026-11-28", as days stand in the book

// Of a text that isn't what stands in such a column: throws InputError, since somebody else wrote into the book.
Date day_in(const Column& column);
Instant instant_in(const Column& column);
Practice practice_in(const Column& kind, const Column& movement);

/// The row of a pupil. Throws InputError when there is none.
RowKey row_of_pupil(Database& db, std::string_view code);
/// The row of a lesson of that number. Throws InputError when there is none.
RowKey row_of_lesson(Database& db, std::string_view code, int number);

}  // namespace loopwright::book
