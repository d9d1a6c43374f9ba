// Method: a rule that was added NOT VALID is validated; where that fails its rows are read, and those are told that no reader of
// the room takes. Validating hinders nobody's reading and writing (PostgreSQL 15 documentation, ALTER TABLE, Notes).
#include "book/odd_rows.hpp"

#include <array>

#include "loopwright/base/instant.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::book {
namespace {

struct SharedRule {
  const char* table;
  const char* name;
  const char* validate;
  /// Gives what is looked at, and how many rows have it.
  const char* rows;
  const char* column;
  bool is_day;
};

constexpr std::array shared_rules{
    SharedRule{"seen", "seen_day", "ALTER TABLE seen VALIDATE CONSTRAINT seen_day",
               "SELECT day, count(*) FROM seen GROUP BY day ORDER BY day", "day", true},
    SharedRule{"street_use", "street_use_day",
               "ALTER TABLE street_use VALIDATE CONSTRAINT street_use_day",
               "SELECT day, count(*) FROM street_use GROUP BY day ORDER BY day", "day", true},
    SharedRule{"street_use", "street_use_times",
               "ALTER TABLE street_use VALIDATE CONSTRAINT street_use_times",
               "SELECT times, count(*) FROM street_use WHERE times NOT BETWEEN 1 AND 1000 GROUP BY "
               "times ORDER BY times",
               "times", false},
    SharedRule{"centre", "centre_since", "ALTER TABLE centre VALIDATE CONSTRAINT centre_since",
               "SELECT since, count(*) FROM centre GROUP BY since ORDER BY since", "since", true},
};

bool is_warranted(ServerLink& link, const SharedRule& rule) {
  const std::vector<Value> values{std::string(rule.name)};
  return link.ask("SELECT 1 FROM pg_constraint WHERE conname = ? AND convalidated", values).next();
}

/// False when a row doesn't keep it.
bool is_kept(ServerLink& link, const SharedRule& rule) {
  link.exec("SAVEPOINT before_rule");
  try {
    link.exec(rule.validate);
    return true;
  } catch (const ServerError& error) {
    if (!error.state.starts_with("22") && !error.state.starts_with("23")) throw;
    link.exec("ROLLBACK TO SAVEPOINT before_rule");
    return false;
  }
}

void add_odd(ServerLink& link, const SharedRule& rule, std::vector<std::string>& odd) {
  for (Rows row = link.ask(rule.rows, {}); row.next();) {
    const std::string text = row.at(0).text();
    if (rule.is_day && read_date(text)) continue;
    odd.push_back(std::string("table ") + rule.table + ", " + rule.column + " '" + printable(text) +
                  "', rows: " + row.at(1).text());
  }
}

}  // namespace

std::vector<std::string> odd_rows(ServerLink& link) {
  std::vector<std::string> odd;
  for (const SharedRule& rule : shared_rules)
    if (!is_warranted(link, rule) && !is_kept(link, rule)) add_odd(link, rule, odd);
  return odd;
}

}  // namespace loopwright::book
