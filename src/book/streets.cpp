// Method: the ledger is summed by the database. Lines on no day, or driven more often than a lesson can, aren't looked at: of a
// school's book all see all lines, and into an older one anybody could write them.
#include "loopwright/book/streets.hpp"

#include <algorithm>
#include <limits>
#include <stdexcept>
#include <string>

#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/base/table.hpp"

namespace loopwright::book {
namespace {

constexpr int month_days = 30;  // as src/rules/caps.txt means it: those that end with the lesson's

/// Sums of a ledger that somebody filled by SQL may be of any size.
int times_in(const Column& sum) {
  return static_cast<int>(
      std::min<std::int64_t>(sum.wide_number(), std::numeric_limits<int>::max()));
}

std::optional<RowKey> left_out(Database& db, const LedgerAsk& ask) {
  if (ask.number == 0) return std::nullopt;
  return row_of_lesson(db, ask.code, ask.number);
}

}  // namespace

LedgerCaps ledger_caps() {
  const auto rows = read_table(rule_text("caps"));
  const auto value = [&](std::string_view name) {
    for (const TableRow& row : rows)
      if (row[0] == name) return static_cast<int>(number_cell(row, 1));
    throw std::logic_error("caps.txt: no row '" + std::string(name) + "'");
  };
  return {value("street passes a day"), value("street passes a month")};
}

std::vector<wish::StreetUse> street_use(const Book& book, const LedgerAsk& asked) {
  const std::string last = day_text(asked.day);
  const std::string first = day_text(date_from_days(days_since_epoch(asked.day) - month_days + 1));
  return book.connection().read([&](Database& db) {
    std::vector<wish::StreetUse> uses;
    auto row = ask(db,
                   "SELECT way, max(today), max(month) FROM (SELECT way, sum(CASE WHEN day = ?2 "
                   "THEN times ELSE 0 END) "
                   "AS today, sum(times) AS month FROM ledger WHERE day BETWEEN ?1 AND ?2 AND "
                   "times BETWEEN 1 AND 1000 AND (lesson IS DISTINCT FROM ?3 OR ?3 IS NULL) "
                   "GROUP BY way, node_a, node_b) AS part GROUP BY way ORDER BY way",
                   first, last, left_out(db, asked));
    while (row.next())
      uses.push_back({row.at(0).wide_number(), times_in(row.at(1)), times_in(row.at(2))});
    return uses;
  });
}

std::vector<StreetTotal> most_used(const Book& book, Date first, Date last) {
  return book.connection().read([&](Database& db) {
    std::vector<StreetTotal> totals;
    auto row = ask(db,
                   "SELECT way, max(times), max(lessons), max(last) FROM (SELECT way, sum(times) "
                   "AS times, count(*) AS "
                   "lessons, max(day) AS last FROM ledger WHERE day BETWEEN ? AND ? AND times "
                   "BETWEEN 1 AND 1000 GROUP BY way, node_a, node_b) AS part "
                   "GROUP BY way ORDER BY 2 DESC, way",
                   day_text(first), day_text(last));
    while (row.next())
      if (const auto last_day = read_date(row.at(3).text()))
        totals.push_back(
            {row.at(0).wide_number(), times_in(row.at(1)), times_in(row.at(2)), *last_day});
    return totals;
  });
}

}  // namespace loopwright::book
