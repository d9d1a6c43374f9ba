// The tables of a book that hang on pupils, and how their rows are read and written one by one: for moving pupils from one book
// into another, and for taking them along.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace loopwright::book {

enum class Of { pupil, lesson };

/// Columns named pupil, lesson and reached_in hold keys.
struct MovedTable {
  std::string_view name;
  Of of;
  std::string_view columns, order;
};

inline constexpr MovedTable lessons_moved{
    "lesson", Of::pupil,
    "pupil, number, state, start, start_s, length_minutes, area, notes, terms, wish, loop_file, "
    "likely_s, minutes, light, weather, traffic, said, remark, private_minutes",
    "number"};

/// All that hangs on a pupil, but its lessons.
std::span<const MovedTable> tables_moved();

/// A pupil's rows of it, in an order that both books share. ?: the pupil's key.
std::string select_of_pupil(const MovedTable& table);
/// A lesson's rows of it. ?: the lesson's key.
std::string select_of_lesson(const MovedTable& table);
/// With a place for each column's value.
std::string insert_into(std::string_view table, std::string_view columns);

}  // namespace loopwright::book
