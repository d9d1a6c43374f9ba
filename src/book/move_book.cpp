// Method: pupil by pupil (copy_pupil.hpp), then what is of no pupil.
#include "loopwright/book/move_book.hpp"

#include <string>
#include <utility>

#include "book/connection.hpp"
#include "book/copy_pupil.hpp"
#include "book/moved_tables.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/day_copy.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::book {
namespace {

void need_new(Database& from, Database& to) {
  for (auto row = ask(from, "SELECT code FROM pupil ORDER BY lower(code)"); row.next();)
    if (ask(to, "SELECT 1 FROM pupil WHERE lower(code) = lower(?)", row.at(0).text()).next())
      throw InputError("the second book has a pupil " + row.at(0).text() +
                       " already; nothing is written");
}

int move_nameless(Database& from, Database& to) {
  constexpr std::string_view columns = "day, way, node_a, node_b, times, near_door";
  int rows = 0;
  for (auto row = ask(from, "SELECT " + std::string(columns) +
                                " FROM street_use WHERE pupil IS NULL ORDER BY rowid");
       row.next(); ++rows)
    to.run(insert_into("street_use", columns), row.values());
  return rows;
}

}  // namespace

Moved move_book(const Book& from, Book& to) {
  const bool to_school = is_address(to.file().string()) && !is_address(from.file().string());
  if (is_day_copy(from))
    throw InputError(from.file().string() +
                     ": is a day's copy; 'loopwright school bring' hands in what was logged in it");
  bool begun = false;
  // The first book is read to its end before the second one is closed: once that has them, nothing can go wrong any more.
  return to.connection().write([&](Database& target) {
    begun = false;
    return from.connection().read([&](Database& source) {
      if (std::exchange(begun, true))
        throw InputError(from.file().string() +
                         ": was away while it was read; nothing is written, try again");
      need_new(source, target);
      Moved moved;
      for (auto row = ask(source, "SELECT id FROM pupil ORDER BY lower(code)"); row.next();
           ++moved.pupils)
        moved.rows += copy_pupil(source, row.at(0).key(), target).rows;
      moved.rows += copy_seen(source, target);
      moved.rows += copy_centres(source, target);
      if (to_school) moved.rows += move_nameless(source, target);
      return moved;
    });
  });
}

}  // namespace loopwright::book
