#include "loopwright/book/pupils.hpp"

#include <cassert>

#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/day_copy.hpp"

namespace loopwright::book {
namespace {

std::optional<std::string> day_or_none(const std::optional<Date>& day) {
  if (!day) return std::nullopt;
  return day_text(*day);
}

/// Ticks and what is kept off, as they are now.
void write_lists(Database& db, const RowKey& row, const Pupil& pupil) {
  run(db, "DELETE FROM tick WHERE pupil = ?", row);
  run(db, "DELETE FROM avoided WHERE pupil = ?", row);
  for (const auto& [tick, day] : pupil.ticks)
    run(db, "INSERT INTO tick VALUES (?, ?, ?)", row, std::string(name(tick)), day_text(day));
  for (const road::Kind kind : pupil.avoids)
    run(db, "INSERT INTO avoided VALUES (?, ?)", row, std::string(road::name(kind)));
}

void read_lists(Database& db, const RowKey& row, Pupil& pupil) {
  for (auto tick = ask(db, "SELECT what, day FROM tick WHERE pupil = ?", row); tick.next();)
    if (const auto what = parse_tick(tick.at(0).text())) pupil.ticks[*what] = day_in(tick.at(1));
  for (auto kept = ask(db, "SELECT kind, '' FROM avoided WHERE pupil = ? ORDER BY kind", row);
       kept.next();)
    pupil.avoids.push_back(practice_in(kept.at(0), kept.at(1)).kind);
}

Pupil read_row(Database& db, const Rows& row) {
  Pupil pupil{.code = row.at(1).text(),
              .scheme = row.at(2).text(),
              .added = day_in(row.at(3)),
              .home = row.at(4).text()};
  if (!row.at(5).is_null()) pupil.test_day = day_in(row.at(5));
  pupil.my_your = row.at(6).number() != 0;
  read_lists(db, row.at(0).key(), pupil);
  return pupil;
}

bool is_taken(Database& db, const std::string& code) {
  return ask(db, "SELECT 1 FROM pupil WHERE lower(code) = lower(?)", code).next();
}

}  // namespace

void add_pupil(Book& book, const Pupil& pupil) {
  assert(is_code(pupil.code));
  need_no_day_copy(book);
  book.connection().write([&](Database& db) {
    if (is_taken(db, pupil.code))
      throw InputError(pupil.code +
                       " is in the book already; 'loopwright pupil change' changes what is kept");
    auto row = ask(
        db,
        "INSERT INTO pupil (code, scheme, added, home, test_day, my_your) VALUES (?, ?, ?, ?, ?, "
        "?) RETURNING id",
        pupil.code, pupil.scheme, day_text(pupil.added), pupil.home, day_or_none(pupil.test_day),
        pupil.my_your ? 1 : 0);
    row.next();
    write_lists(db, row.at(0).key(), pupil);
  });
}

void change_pupil(Book& book, const Pupil& pupil) {
  need_no_day_copy(book);
  book.connection().write([&](Database& db) {
    const RowKey row = row_of_pupil(db, pupil.code);
    run(db, "UPDATE pupil SET scheme = ?, home = ?, test_day = ?, my_your = ? WHERE id = ?",
        pupil.scheme, pupil.home, day_or_none(pupil.test_day), pupil.my_your ? 1 : 0, row);
    write_lists(db, row, pupil);
  });
}

Pupil pupil_of(const Book& book, std::string_view code) {
  return book.connection().read([&](Database& db) {
    auto row =
        ask(db, "SELECT id, code, scheme, added, home, test_day, my_your FROM pupil WHERE id = ?",
            row_of_pupil(db, code));
    row.next();
    return read_row(db, row);
  });
}

std::vector<Pupil> pupils_of(const Book& book) {
  return book.connection().read([](Database& db) {
    std::vector<Pupil> all;
    auto row = ask(
        db,
        "SELECT id, code, scheme, added, home, test_day, my_your FROM pupil ORDER BY lower(code)");
    while (row.next()) all.push_back(read_row(db, row));
    return all;
  });
}

}  // namespace loopwright::book
