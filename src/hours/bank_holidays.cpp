// Rows of src/rules/bank_holidays.txt that name the region, in their order, which is by day. Names
// point into the table, which is part of the program. Two holidays on one day keep the first name.
#include "hours/bank_holidays.hpp"

#include <algorithm>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::hours {
namespace {

Date date_of(const TableRow& row) {
  return read_date(row.at(0)).value();
}

}  // namespace

std::vector<BankHoliday> bank_holidays_of(std::string_view region) {
  std::vector<BankHoliday> days;
  for (const TableRow& row : read_table(rule_text("bank_holidays"))) {
    if (std::ranges::count(split(row.at(1), ' '), region) == 0) continue;
    const std::int64_t day = days_since_epoch(date_of(row));
    if (days.empty() || days.back().day != day) days.push_back({day, row.at(2)});
  }
  return days;
}

TableYears bank_holiday_years() {
  const std::vector<TableRow> rows = read_table(rule_text("bank_holidays"));
  return {date_of(rows.front()).year, date_of(rows.back()).year};
}

}  // namespace loopwright::hours
