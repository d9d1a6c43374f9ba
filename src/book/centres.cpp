// Method: whose a centre is, the database knows: rows of another are there, but a statement that changes them finds none.
#include "loopwright/book/centres.hpp"

#include <algorithm>

#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::book {
namespace {

/// Throws InputError when another keeps a centre of that name.
void need_own(Database& db, const std::string& name) {
  int rows = 0;
  std::vector<std::string> keepers;
  for (auto row = ask(db, "SELECT kept_by FROM centre WHERE lower(name) = lower(?)", name);
       row.next(); ++rows) {
    const std::string login = row.at(0).text();
    const std::string keeper = login.empty() ? "the office" : login;
    if (std::ranges::find(keepers, keeper) == keepers.end()) keepers.push_back(keeper);
  }
  if (run(db, "UPDATE centre SET name = name WHERE lower(name) = lower(?)", name) == rows) return;
  throw InputError("the test centre " + name + " is kept by " + listed(keepers) +
                   ": who keeps it, or the office, changes it or takes it out; nothing is changed");
}

}  // namespace

std::vector<Centre> centres(const Book& book) {
  return book.connection().read([](Database& db) {
    std::vector<Centre> all;
    for (auto row = ask(db,
                        "SELECT name, outline, hours, since, kept_by FROM centre ORDER BY "
                        "lower(name), since");
         row.next();) {
      // On a school's server anybody may have written it: an odd one stops nobody's mock test.
      const auto since = read_date(row.at(3).text());
      if (since)
        all.push_back(
            {row.at(0).text(), row.at(1).text(), row.at(2).text(), *since, row.at(4).text()});
    }
    return all;
  });
}

void keep_centre(Book& book, const Centre& centre) {
  book.connection().write([&](Database& db) {
    need_own(db, centre.name);
    const std::string since = day_text(centre.since);
    if (run(db,
            "UPDATE centre SET outline = ?, hours = ? WHERE lower(name) = lower(?) AND since = ?",
            centre.outline, centre.hours, centre.name, since) == 0)
      run(db, "INSERT INTO centre (name, outline, hours, since) VALUES (?, ?, ?, ?)", centre.name,
          centre.outline, centre.hours, since);
  });
}

int drop_centre(Book& book, std::string_view name) {
  return book.connection().write([&](Database& db) {
    const std::string dropped(name);
    need_own(db, dropped);
    return run(db, "DELETE FROM centre WHERE lower(name) = lower(?)", dropped);
  });
}

std::vector<Centre> centres_on(std::span<const Centre> all, Date day) {
  std::vector<Centre> on;
  for (const Centre& one : all) {
    if (day < one.since) continue;
    if (!on.empty() && lower(on.back().name) == lower(one.name))
      on.back() = one;
    else
      on.push_back(one);
  }
  return on;
}

}  // namespace loopwright::book
