// Method:
// 1. Pupil by pupil, table by table: rows are read by the pupil's key, written with the keys that the second book gave,
//    and the keys of lessons are kept in a map.
// 2. Then the second book's rows are read by the same statements, and each must be what was read in the first one.
#include "loopwright/book/move_book.hpp"

#include <array>
#include <map>
#include <string>
#include <vector>

#include "book/connection.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::book {
namespace {

enum class Of { pupil, lesson };

/// Columns named pupil, lesson and reached_in hold keys.
struct MovedTable {
  std::string_view name;
  Of of;
  std::string_view columns, order;
};

constexpr std::string_view lesson_columns =
    "pupil, number, state, start, start_s, length_minutes, area, notes, terms, wish, loop_file, "
    "likely_s, minutes, light, weather, traffic, said, remark, private_minutes";

/// All that hangs on a pupil, but its lessons.
constexpr std::array tables_moved{
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

std::string select(const MovedTable& table) {
  return "SELECT " + std::string(table.columns) + " FROM " + std::string(table.name) + " WHERE " +
         (table.of == Of::pupil ? "pupil" : "lesson") + " = ? ORDER BY " + std::string(table.order);
}

/// With a place for each column's value.
std::string insert(std::string_view table, std::string_view columns) {
  std::string places = "?";
  for (const char letter : columns)
    if (letter == ',') places += ", ?";
  return "INSERT INTO " + std::string(table) + " (" + std::string(columns) + ") VALUES (" + places +
         ")";
}

/// The second book's keys of what the first one has. In a file a pupil and a lesson may both be row 1.
struct Keys {
  Value pupil;
  std::map<Value, Value> lessons;
};

Value moved_value(const Column& column, const Keys& keys) {
  const std::string& name = column.name();
  if (name == "pupil" && !column.is_null()) return keys.pupil;
  const bool is_lesson = name == "lesson" || name == "reached_in";
  if (!is_lesson || column.is_null()) return column.value();
  const auto lesson = keys.lessons.find(column.value());
  if (lesson == keys.lessons.end())
    throw InputError("a row of this pupil names a lesson of another; nothing is written");
  return lesson->second;
}

std::vector<Value> moved_row(const Rows& row, const Keys& keys) {
  std::vector<Value> values;
  for (int k = 0; k < row.columns(); ++k) values.push_back(moved_value(row.at(k), keys));
  return values;
}

std::vector<Value> whole_row(const Rows& row) {
  std::vector<Value> values;
  for (int k = 0; k < row.columns(); ++k) values.push_back(row.at(k).value());
  return values;
}

void need_same(const MovedTable& table, Rows first, Rows second, const Keys& keys) {
  while (first.next()) {
    if (second.next() && moved_row(first, keys) == whole_row(second)) continue;
    throw InputError("a row of " + std::string(table.name) +
                     " isn't what was read; nothing is written");
  }
  if (second.next())
    throw InputError("the second book has more rows of " + std::string(table.name) +
                     " than were written; nothing is written");
}

/// One pupil's copying.
class Moving {
 public:
  Moving(Database& from, Database& to) : from_(from), to_(to) {}

  /// How many rows.
  int move(const RowKey& pupil) {
    rows_ = 0;
    lessons_.clear();
    keys_ = {};
    keys_.pupil = added(
        ask(from_, "SELECT scheme, added, home, test_day, my_your, code FROM pupil WHERE id = ?",
            pupil),
        "INSERT INTO pupil (scheme, added, home, test_day, my_your, code) VALUES (?, ?, ?, ?, ?, "
        "?) RETURNING id");
    for (auto row = ask(from_, "SELECT id FROM lesson WHERE pupil = ? ORDER BY number", pupil);
         row.next();)
      lessons_.push_back(row.at(0).key());
    for (const RowKey& lesson : lessons_)
      keys_.lessons[lesson.value] = added(
          ask(from_, "SELECT " + std::string(lesson_columns) + " FROM lesson WHERE id = ?", lesson),
          insert("lesson", lesson_columns) + " RETURNING id");
    for (const MovedTable& table : tables_moved) each_owner(table, pupil, &Moving::copy);
    need_same({"lesson", Of::pupil, lesson_columns, "number"}, all_lessons(from_, pupil),
              all_lessons(to_, {keys_.pupil}), keys_);
    for (const MovedTable& table : tables_moved) each_owner(table, pupil, &Moving::compare);
    return rows_;
  }

 private:
  /// The new row's key.
  Value added(Rows row, const std::string& sql) {
    row.next();
    Rows key = to_.ask(sql, moved_row(row, keys_));
    key.next();
    ++rows_;
    return key.at(0).value();
  }

  static Rows all_lessons(Database& db, const RowKey& pupil) {
    return ask(
        db,
        "SELECT " + std::string(lesson_columns) + " FROM lesson WHERE pupil = ? ORDER BY number",
        pupil);
  }

  void each_owner(const MovedTable& table, const RowKey& pupil,
                  void (Moving::*act)(const MovedTable&, const RowKey&)) {
    if (table.of == Of::pupil) return (this->*act)(table, pupil);
    for (const RowKey& lesson : lessons_) (this->*act)(table, lesson);
  }

  void copy(const MovedTable& table, const RowKey& owner) {
    const std::string sql = insert(table.name, table.columns);
    for (auto row = ask(from_, select(table), owner); row.next(); ++rows_)
      to_.run(sql, moved_row(row, keys_));
  }

  void compare(const MovedTable& table, const RowKey& owner) {
    need_same(table, ask(from_, select(table), owner),
              ask(to_, select(table),
                  RowKey{table.of == Of::pupil ? keys_.pupil : keys_.lessons.at(owner.value)}),
              keys_);
  }

  Database& from_;
  Database& to_;
  std::vector<RowKey> lessons_;
  Keys keys_;
  int rows_ = 0;
};

void need_new(Database& from, Database& to) {
  for (auto row = ask(from, "SELECT code FROM pupil ORDER BY lower(code)"); row.next();)
    if (ask(to, "SELECT 1 FROM pupil WHERE lower(code) = lower(?)", row.at(0).text()).next())
      throw InputError("the second book has a pupil " + row.at(0).text() +
                       " already; nothing is written");
}

int move_seen(Database& from, Database& to) {
  int rows = 0;
  for (auto row = ask(from, "SELECT what, object, map_text, day, says FROM seen"); row.next();
       ++rows)
    to.run(
        "INSERT INTO seen (what, object, map_text, day, says) VALUES (?, ?, ?, ?, ?) ON CONFLICT "
        "(what, object) DO UPDATE SET map_text = excluded.map_text, day = excluded.day, says = "
        "excluded.says WHERE excluded.day >= seen.day",
        whole_row(row));
  return rows;
}

int move_nameless(Database& from, Database& to) {
  constexpr std::string_view columns = "day, way, node_a, node_b, times, near_door";
  int rows = 0;
  for (auto row = ask(from, "SELECT " + std::string(columns) +
                                " FROM street_use WHERE pupil IS NULL ORDER BY rowid");
       row.next(); ++rows)
    to.run(insert("street_use", columns), whole_row(row));
  return rows;
}

}  // namespace

Moved move_book(const Book& from, Book& to) {
  const bool to_school = is_address(to.file().string()) && !is_address(from.file().string());
  return from.connection().read([&](Database& source) {
    return to.connection().write([&](Database& target) {
      need_new(source, target);
      Moved moved;
      Moving moving(source, target);
      for (auto row = ask(source, "SELECT id FROM pupil ORDER BY lower(code)"); row.next();
           ++moved.pupils)
        moved.rows += moving.move(row.at(0).key());
      moved.rows += move_seen(source, target);
      if (to_school) moved.rows += move_nameless(source, target);
      return moved;
    });
  });
}

}  // namespace loopwright::book
