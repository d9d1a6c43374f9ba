// 1. Program, commit and formats.
// 2. Of tables with rows by day: how far these reach.
// 3. Of tables that say "As of: DAY" in their head: that day, with the tables of one day together.
#include "loopwright/command/version.hpp"

#include <algorithm>
#include <array>
#include <iostream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/base/table.hpp"
#include "loopwright/book/migrations.hpp"
#include "loopwright/file/format.hpp"
#include "loopwright/store/format.hpp"

namespace loopwright::command {
namespace {

/// The tables of src/rules with a day in their head; a test finds one that is forgotten here.
constexpr std::array dated_tables{"skills",       "marking", "mock_test", "proposal", "at_home",
                                  "lesson_times", "seen",    "pull_ups",  "kinds"};

std::string day_in_head(std::string_view table) {
  constexpr std::string_view said = "As of: ";
  const std::string_view text = rule_text(table);
  const auto begin = text.find(said);
  if (begin == std::string_view::npos) throw std::logic_error(std::string(table) + " tells no day");
  const auto day = text.substr(begin + said.size());
  return std::string(day.substr(0, day.find('.')));
}

/// "29 Nov 2026: skills, marking" and so on, days in the order in which they come up.
std::vector<std::string> tables_by_day() {
  std::vector<std::pair<std::string, std::string>> days;
  for (const std::string_view table : dated_tables) {
    const std::string day = day_in_head(table);
    auto row = std::ranges::find(days, day, &std::pair<std::string, std::string>::first);
    if (row == days.end()) row = days.emplace(days.end(), day, "");
    std::string name(table);
    std::ranges::replace(name, '_', ' ');
    row->second.append(row->second.empty() ? " " : ", ").append(name);
  }
  std::vector<std::string> lines;
  lines.reserve(days.size());
  for (auto& [day, tables] : days) lines.push_back(std::move(day.append(":").append(tables)));
  return lines;
}

/// The days in a column of a table, ascending; cells that hold none are passed over.
std::vector<Date> days_in(std::string_view table, std::size_t column) {
  std::vector<Date> days;
  for (const TableRow& row : read_table(rule_text(table)))
    if (const auto day = read_date(row.at(column))) days.push_back(*day);
  std::ranges::sort(days);
  if (days.empty()) throw std::logic_error(std::string(table) + " has no days");
  return days;
}

}  // namespace

Exit version(std::string_view version, std::string_view commit) {
  const std::vector<Date> holidays = days_in("bank_holidays", 0);
  const Date newest_limit = days_in("limits", 2).back();
  std::cout << "loopwright " << version << (commit.empty() ? "" : ", commit ") << commit << '\n'
            << "formats: area file " << store::area_format() << ", loop file "
            << file::loop_file_format() << ", book " << book::migrations().size() << '\n'
            << "bank holidays: " << holidays.front().year << " to " << holidays.back().year
            << "; school terms: none built in, yours by --terms\n"
            << "speed limits by law: the last change in them is of " << newest_limit.year << '\n'
            << "tables as of\n";
  for (const std::string& line : tables_by_day()) std::cout << "  " << line << '\n';
  return Exit::done;
}

}  // namespace loopwright::command
