// Method: the table's rows are taken in order; of a number the latest row that holds on the day.
#include "loopwright/book/mock_test.hpp"

#include <algorithm>
#include <cassert>
#include <optional>
#include <stdexcept>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::book {
namespace {

using road::Kind;
using road::Movement;

[[noreturn]] void throw_odd(std::string_view cell) {
  throw std::logic_error("mock_test.txt: '" + std::string(cell) + "' is odd");
}

Kind kind_in(std::string_view text) {
  const auto kind = road::parse_kind(text);
  if (!kind) throw_odd(text);
  return *kind;
}

/// "emerge:right"
Practice practice_in(std::string_view text) {
  const auto colon = text.find(':');
  if (colon == std::string_view::npos) return {kind_in(text)};
  const auto movement = road::parse_movement(text.substr(colon + 1));
  if (!movement) throw_odd(text);
  return {kind_in(text.substr(0, colon)), *movement};
}

std::vector<TableRow> rows_of(std::string_view sort) {
  static const auto rows = read_table(rule_text("mock_test"));
  std::vector<TableRow> of;
  for (const TableRow& row : rows)
    if (row.size() >= 2 && row[0] == sort) of.push_back(row);
  return of;
}

int number_on(std::string_view name, Date day) {
  std::optional<int> value;
  for (const TableRow& row : rows_of("number")) {
    if (row[1] != name) continue;
    const auto since = row.size() == 4 ? read_date(row[2]) : std::nullopt;
    if (!since) throw_odd(name);
    if (!value || *since <= day) value = static_cast<int>(number_cell(row, 3));
  }
  if (!value) throw_odd(name);
  return *value;
}

std::int64_t last_driven_on(std::span<const PracticeLine> lines, Kind kind) {
  std::int64_t last = 0;
  for (const PracticeLine& line : lines)
    if (line.what.kind == kind) last = std::max(last, days_since_epoch(line.last));
  return last;
}

/// None when there is no place for any.
std::optional<Kind> manoeuvre_for(std::span<const Lesson> lessons,
                                  const std::set<Practice>& there) {
  const auto lines = practice_lines(lessons);
  std::optional<Kind> chosen;
  for (const TableRow& row : rows_of("manoeuvre")) {
    const Kind kind = kind_in(row[1]);
    if (!there.contains({kind, Movement::none})) continue;
    if (!chosen || last_driven_on(lines, kind) < last_driven_on(lines, *chosen)) chosen = kind;
  }
  return chosen;
}

}  // namespace

MockWish mock_wish(std::span<const Lesson> lessons, const std::set<Practice>& there, Date day) {
  MockWish wish{.wants = {}};
  for (const TableRow& row : rows_of("want")) {
    const Practice what = practice_in(row[1]);
    if (there.contains(what)) wish.wants.push_back(what);
  }
  wish.driving_minutes = number_on("driving minutes", day);
  wish.independent_minutes = number_on("independent minutes", day);
  if (there.contains({Kind::move_off, Movement::none}))
    wish.stops = number_on("stops", day);
  else
    wish.stops = 0;
  wish.stop_minutes = wish.stops * road::kind_row(Kind::move_off).minutes;
  if (const auto manoeuvre = manoeuvre_for(lessons, there)) {
    wish.manoeuvre = *manoeuvre;
    wish.has_manoeuvre = true;
    wish.stop_minutes += road::kind_row(*manoeuvre).minutes;
  }
  return wish;
}

Faults counted(std::span<const LessonFault> faults) {
  Faults sum;
  for (const LessonFault& fault : faults) {
    int& grade = fault.grade == Grade::driving   ? sum.driving
                 : fault.grade == Grade::serious ? sum.serious
                                                 : sum.dangerous;
    grade += fault.count;
  }
  return sum;
}

bool is_mock_plan(const Plan& plan) {
  return plan.wish.starts_with(mock_plan_line);
}

std::vector<Repeated> repeated(std::span<const LessonFault> faults) {
  std::vector<Repeated> all;
  for (const Heading& heading : headings()) {
    int count = 0;
    for (const LessonFault& fault : faults)
      if (fault.heading == heading.code) count += fault.count;
    if (count > 1) all.push_back({&heading, count});
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Repeated& a, const Repeated& b) { return a.count > b.count; });
  return all;
}

}  // namespace loopwright::book
