#include "loopwright/book/pupils.hpp"

#include <cassert>

#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::book {
namespace {

std::optional<std::string> day_or_none(const std::optional<Date>& day) {
  if (!day) return std::nullopt;
  return day_text(*day);
}

/// Ticks and what is kept off, as they are now.
void write_lists(SQLite::Database& db, std::int64_t row, const Pupil& pupil) {
  run(db, "DELETE FROM tick WHERE pupil = ?", row);
  run(db, "DELETE FROM avoided WHERE pupil = ?", row);
  for (const auto& [tick, day] : pupil.ticks)
    run(db, "INSERT INTO tick VALUES (?, ?, ?)", row, std::string(name(tick)), day_text(day));
  for (const road::Kind kind : pupil.avoids)
    run(db, "INSERT INTO avoided VALUES (?, ?)", row, std::string(road::name(kind)));
}

void read_lists(SQLite::Database& db, std::int64_t row, Pupil& pupil) {
  for (auto tick = ask(db, "SELECT what, day FROM tick WHERE pupil = ?", row); tick.executeStep();)
    if (const auto what = parse_tick(tick.getColumn(0).getString()))
      pupil.ticks[*what] = day_in(tick.getColumn(1));
  for (auto kept = ask(db, "SELECT kind, '' FROM avoided WHERE pupil = ? ORDER BY kind", row);
       kept.executeStep();)
    pupil.avoids.push_back(practice_in(kept.getColumn(0), kept.getColumn(1)).kind);
}

Pupil read_row(SQLite::Database& db, const SQLite::Statement& row) {
  Pupil pupil{.code = row.getColumn(1).getString(),
              .scheme = row.getColumn(2).getString(),
              .added = day_in(row.getColumn(3)),
              .home = row.getColumn(4).getString()};
  if (!row.getColumn(5).isNull()) pupil.test_day = day_in(row.getColumn(5));
  pupil.my_your = row.getColumn(6).getInt() != 0;
  read_lists(db, row.getColumn(0).getInt64(), pupil);
  return pupil;
}

bool is_taken(SQLite::Database& db, const std::string& code) {
  return ask(db, "SELECT 1 FROM pupil WHERE code = ?", code).executeStep();
}

}  // namespace

void add_pupil(Book& book, const Pupil& pupil) {
  assert(is_code(pupil.code));
  book.connection().write([&](SQLite::Database& db) {
    if (is_taken(db, pupil.code))
      throw InputError(pupil.code +
                       " is in the book already; 'loopwright pupil change' changes what is kept");
    run(db,
        "INSERT INTO pupil (code, scheme, added, home, test_day, my_your) VALUES (?, ?, ?, ?, ?, "
        "?)",
        pupil.code, pupil.scheme, day_text(pupil.added), pupil.home, day_or_none(pupil.test_day),
        pupil.my_your ? 1 : 0);
    write_lists(db, db.getLastInsertRowid(), pupil);
  });
}

void change_pupil(Book& book, const Pupil& pupil) {
  book.connection().write([&](SQLite::Database& db) {
    const std::int64_t row = row_of_pupil(db, pupil.code);
    run(db, "UPDATE pupil SET scheme = ?, home = ?, test_day = ?, my_your = ? WHERE id = ?",
        pupil.scheme, pupil.home, day_or_none(pupil.test_day), pupil.my_your ? 1 : 0, row);
    write_lists(db, row, pupil);
  });
}

Pupil pupil_of(const Book& book, std::string_view code) {
  return book.connection().read([&](SQLite::Database& db) {
    auto row =
        ask(db, "SELECT id, code, scheme, added, home, test_day, my_your FROM pupil WHERE id = ?",
            row_of_pupil(db, code));
    row.executeStep();
    return read_row(db, row);
  });
}

std::vector<Pupil> pupils_of(const Book& book) {
  return book.connection().read([](SQLite::Database& db) {
    std::vector<Pupil> all;
    auto row =
        ask(db, "SELECT id, code, scheme, added, home, test_day, my_your FROM pupil ORDER BY code");
    while (row.executeStep()) all.push_back(read_row(db, row));
    return all;
  });
}

}  // namespace loopwright::book
