// Method:
// 1. Table by table: rows are read by the pupil's key, and written with the keys that the second book gave.
// 2. Then the second book's rows are read by the same statements, and each must be what was read in the first one.
#include "book/copy_pupil.hpp"

#include <set>

#include "book/moved_tables.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::book {
namespace {

constexpr std::string_view pupil_columns = "scheme, added, home, test_day, my_your, code";

/// Whether it is UTF-8 (Unicode 15.0, table 3-7), and without a zero byte, which no server keeps.
bool is_text(std::string_view text) {
  if (text.find('\0') != std::string_view::npos) return false;
  for (std::size_t k = 0; k < text.size();) {
    const auto byte = [&](std::size_t at) {
      return at < text.size() ? static_cast<unsigned char>(text[at]) : 0U;
    };
    const unsigned first = byte(k);
    const std::size_t more = first < 0x80 ? 0 : first < 0xE0 ? 1 : first < 0xF0 ? 2 : 3;
    if (more > 0 && (first < 0xC2 || first > 0xF4)) return false;
    for (std::size_t n = 1; n <= more; ++n)
      if (byte(k + n) < 0x80 || byte(k + n) > 0xBF) return false;
    const unsigned second = byte(k + 1);
    if ((first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F) ||
        (first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F))
      return false;
    k += more + 1;
  }
  return true;
}

class Copying {
 public:
  Copying(Database& from, RowKey pupil, Database& to)
      : from_(from), pupil_(std::move(pupil)), to_(to) {}

  CopiedPupil done() {
    copy_itself();
    copy_lessons();
    for (const MovedTable& table : tables_moved()) copy(table);
    compare(lessons_moved);
    for (const MovedTable& table : tables_moved()) compare(table);
    return std::move(copied_);
  }

 private:
  void copy_itself() {
    Rows row =
        ask(from_, "SELECT " + std::string(pupil_columns) + " FROM pupil WHERE id = ?", pupil_);
    row.next();
    code_ = row.at(row.columns() - 1).text();
    copied_.pupil = added("pupil", pupil_columns, moved_row("pupil", row));
  }

  void copy_lessons() {
    const std::string columns(lessons_moved.columns);
    for (auto row =
             ask(from_, "SELECT id, " + columns + " FROM lesson WHERE pupil = ? ORDER BY number",
                 pupil_);
         row.next();) {
      std::vector<Value> values = moved_row("lesson", row);
      values.erase(values.begin());
      copied_.lessons[row.at(0).value()] = added("lesson", lessons_moved.columns, values);
    }
  }

  /// The new row's key.
  Value added(std::string_view table, std::string_view columns, const std::vector<Value>& values) {
    Rows key = to_.ask(insert_into(table, columns) + " RETURNING id", values);
    key.next();
    ++copied_.rows;
    return key.at(0).value();
  }

  void copy(const MovedTable& table) {
    const std::string sql = insert_into(table.name, table.columns);
    for (auto row = ask(from_, select_of_pupil(table), pupil_); row.next(); ++copied_.rows)
      to_.run(sql, moved_row(table.name, row));
  }

  void compare(const MovedTable& table) {
    Rows first = ask(from_, select_of_pupil(table), pupil_);
    Rows second = ask(to_, select_of_pupil(table), RowKey{copied_.pupil});
    while (first.next())
      if (!second.next() || moved_row(table.name, first) != second.values())
        throw InputError("a row of " + std::string(table.name) +
                         " isn't what was read; nothing is written");
    if (second.next())
      throw InputError("the second book has more rows of " + std::string(table.name) +
                       " than were written; nothing is written");
  }

  std::vector<Value> moved_row(std::string_view table, const Rows& row) {
    std::vector<Value> values;
    for (int k = 0; k < row.columns(); ++k) {
      values.push_back(moved_value(row.at(k)));
      const auto* text = std::get_if<std::string>(&values.back());
      if (text != nullptr && !is_text(*text)) no_text(table, row.at(k).name(), *text);
    }
    return values;
  }

  Value moved_value(const Column& column) const {
    if (column.is_null()) return column.value();
    if (column.name() == "pupil") return copied_.pupil;
    if (column.name() != "lesson" && column.name() != "reached_in") return column.value();
    const auto lesson = copied_.lessons.find(column.value());
    if (lesson == copied_.lessons.end())
      throw InputError("a row of " + code_ + " names a lesson of another; nothing is written");
    return lesson->second;
  }

  [[noreturn]] void no_text(std::string_view table, const std::string& column,
                            const std::string& text) const {
    constexpr std::size_t shown = 40;
    throw InputError(code_ + ": " + std::string(table) + ", " + column + ": '" +
                     printable(text.substr(0, shown)) +
                     "' holds bytes that are no text; put it right in the first book (log the "
                     "lesson anew, or change the pupil); nothing is written");
  }

  Database& from_;
  RowKey pupil_;
  Database& to_;
  std::string code_;
  CopiedPupil copied_;
};

}  // namespace

CopiedPupil copy_pupil(Database& from, const RowKey& pupil, Database& to) {
  return Copying(from, pupil, to).done();
}

int copy_seen(Database& from, Database& to) {
  int rows = 0;
  for (auto row = ask(from, "SELECT what, object, map_text, day, says FROM seen"); row.next();
       ++rows)
    to.run(
        "INSERT INTO seen (what, object, map_text, day, says) VALUES (?, ?, ?, ?, ?) ON CONFLICT "
        "(what, object) DO UPDATE SET map_text = excluded.map_text, day = excluded.day, says = "
        "excluded.says WHERE excluded.day >= seen.day",
        row.values());
  return rows;
}

int copy_centres(Database& from, Database& to) {
  int rows = 0;
  std::set<std::string> there;
  for (auto row = ask(to, "SELECT DISTINCT name FROM centre"); row.next();)
    there.insert(lower(row.at(0).text()));
  for (auto row = ask(from, "SELECT name, outline, hours, since FROM centre"); row.next();) {
    if (there.contains(lower(row.at(0).text()))) continue;
    to.run("INSERT INTO centre (name, outline, hours, since) VALUES (?, ?, ?, ?)", row.values());
    ++rows;
  }
  return rows;
}

}  // namespace loopwright::book
