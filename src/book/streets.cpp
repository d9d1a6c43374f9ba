#include "loopwright/book/streets.hpp"

#include "book/connection.hpp"
#include "book/rows.hpp"

namespace loopwright::book {
namespace {

constexpr int month_days = 30;  // as src/rules/caps.txt means it: those that end with the lesson's

std::int64_t left_out(SQLite::Database& db, const LedgerAsk& ask) {
  return ask.number == 0 ? 0 : row_of_lesson(db, ask.code, ask.number);
}

}  // namespace

std::vector<wish::StreetUse> street_use(const Book& book, const LedgerAsk& asked) {
  const std::string last = day_text(asked.day);
  const std::string first = day_text(date_from_days(days_since_epoch(asked.day) - month_days + 1));
  return book.connection().read([&](SQLite::Database& db) {
    std::vector<wish::StreetUse> uses;
    auto row = ask(db,
                   "SELECT way, max(today), max(month) FROM (SELECT way, sum(CASE WHEN day = ?2 "
                   "THEN times ELSE 0 END) "
                   "AS today, sum(times) AS month FROM street_use WHERE day BETWEEN ?1 AND ?2 AND "
                   "lesson IS NOT ?3 "
                   "GROUP BY way, node_a, node_b) GROUP BY way ORDER BY way",
                   first, last, left_out(db, asked));
    while (row.executeStep())
      uses.push_back(
          {row.getColumn(0).getInt64(), row.getColumn(1).getInt(), row.getColumn(2).getInt()});
    return uses;
  });
}

std::vector<StreetTotal> most_used(const Book& book, Date first, Date last) {
  return book.connection().read([&](SQLite::Database& db) {
    std::vector<StreetTotal> totals;
    auto row = ask(db,
                   "SELECT way, max(times), max(lessons), max(last) FROM (SELECT way, sum(times) "
                   "AS times, count(*) AS "
                   "lessons, max(day) AS last FROM street_use WHERE day BETWEEN ? AND ? GROUP BY "
                   "way, node_a, node_b) "
                   "GROUP BY way ORDER BY 2 DESC, way",
                   day_text(first), day_text(last));
    while (row.executeStep())
      totals.push_back({row.getColumn(0).getInt64(), row.getColumn(1).getInt(),
                        row.getColumn(2).getInt(), day_in(row.getColumn(3))});
    return totals;
  });
}

}  // namespace loopwright::book
