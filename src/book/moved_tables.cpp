#include "book/moved_tables.hpp"

#include <array>

#include "loopwright/base/text.hpp"

namespace loopwright::book {
namespace {

constexpr std::array tables_of_a_pupil{
    MovedTable{"tick", Of::pupil, "pupil, what, day", "what"},
    MovedTable{"avoided", Of::pupil, "pupil, kind", "kind"},
    MovedTable{"pass", Of::lesson,
               "lesson, at, kind, movement, hardness, place, driven, level, help, traced", "at"},
    MovedTable{"road_minutes", Of::lesson, "lesson, road, minutes", "rowid"},
    MovedTable{"limit_minutes", Of::lesson, "lesson, value, unit, minutes", "unit, value"},
    MovedTable{"fault", Of::lesson, "lesson, heading, grade, count, kind, movement", "rowid"},
    MovedTable{"intervention", Of::lesson, "lesson, how, count, kind, movement, why", "rowid"},
    MovedTable{"observation", Of::lesson, "lesson, skill, day, level, said", "rowid"},
    MovedTable{"goal", Of::lesson, "lesson, text, reached_in", "rowid"},
    MovedTable{"mock_test", Of::lesson, "lesson, day, driving, serious, dangerous", "day"},
    MovedTable{"trace", Of::lesson, "lesson, start, seconds, standing_s, metres, recording",
               "start"},
    MovedTable{"trace_time", Of::lesson, "lesson, control, count, expected_s, took_s", "rowid"},
    MovedTable{"to_check", Of::lesson, "lesson, at, letter, what, object, map_text", "at"},
    MovedTable{"written_file", Of::pupil, "path, pupil, lesson, sha256", "path"},
    MovedTable{"street_use", Of::pupil, "day, way, node_a, node_b, times, near_door, pupil, lesson",
               "rowid"},
};

/// "pass.lesson, pass.at": lessons have columns of the same names.
std::string of_table(const MovedTable& table, std::string_view names) {
  std::string all;
  for (const std::string_view name : split(names, ',')) {
    if (!all.empty()) all += ", ";
    all.append(table.name).append(".").append(name);
  }
  return all;
}

}  // namespace

std::span<const MovedTable> tables_moved() {
  return tables_of_a_pupil;
}

std::string select_of_pupil(const MovedTable& table) {
  const std::string name(table.name);
  const std::string what = "SELECT " + of_table(table, table.columns) + " FROM " + name;
  const std::string order = of_table(table, table.order);
  if (table.of == Of::pupil) return what + " WHERE pupil = ? ORDER BY " + order;
  return what + " JOIN lesson ON lesson.id = " + name +
         ".lesson WHERE lesson.pupil = ? ORDER BY lesson.number, " + order;
}

std::string select_of_lesson(const MovedTable& table) {
  return "SELECT " + of_table(table, table.columns) + " FROM " + std::string(table.name) +
         " WHERE lesson = ? ORDER BY " + of_table(table, table.order);
}

std::string insert_into(std::string_view table, std::string_view columns) {
  std::string places = "?";
  for (const char letter : columns)
    if (letter == ',') places += ", ?";
  return "INSERT INTO " + std::string(table) + " (" + std::string(columns) + ") VALUES (" + places +
         ")";
}

}  // namespace loopwright::book
