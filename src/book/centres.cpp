#include "loopwright/book/centres.hpp"

#include "book/connection.hpp"
#include "book/rows.hpp"

namespace loopwright::book {

std::vector<Centre> centres(const Book& book) {
  return book.connection().read([](Database& db) {
    std::vector<Centre> all;
    for (auto row = ask(db, "SELECT name, outline, hours, since FROM centre ORDER BY name, since");
         row.next();)
      all.push_back({row.at(0).text(), row.at(1).text(), row.at(2).text(), day_in(row.at(3))});
    return all;
  });
}

void keep_centre(Book& book, const Centre& centre) {
  book.connection().write([&](Database& db) {
    run(db,
        "INSERT INTO centre (name, outline, hours, since) VALUES (?, ?, ?, ?) ON CONFLICT (name, "
        "since) DO UPDATE SET outline = excluded.outline, hours = excluded.hours",
        centre.name, centre.outline, centre.hours, day_text(centre.since));
  });
}

int drop_centre(Book& book, std::string_view name) {
  int dropped = 0;
  book.connection().write([&](Database& db) {
    dropped = run(db, "DELETE FROM centre WHERE name = ?", std::string(name));
  });
  return dropped;
}

std::vector<Centre> centres_on(std::span<const Centre> all, Date day) {
  std::vector<Centre> on;
  for (const Centre& one : all) {
    if (day < one.since) continue;
    if (!on.empty() && on.back().name == one.name)
      on.back() = one;
    else
      on.push_back(one);
  }
  return on;
}

}  // namespace loopwright::book
