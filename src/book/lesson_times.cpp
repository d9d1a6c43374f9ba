#include "loopwright/book/lesson_times.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <stdexcept>
#include <vector>

#include "loopwright/base/table.hpp"

namespace loopwright::book {
namespace {

struct Row {
  double length = 0, wheels = 0;
};
struct TimesOfTopic {
  std::vector<Row> rows;  ///< by length
  int reserve = 0;
};

TimesOfTopic read_times(Topic topic) {
  const std::size_t column = topic == Topic::fresh ? 1 : 2;
  TimesOfTopic times;
  for (const TableRow& row : read_table(rule_text("lesson_times"))) {
    if (row[0] == "reserve")
      times.reserve = static_cast<int>(number_cell(row, column));
    else
      times.rows.push_back({number_cell(row, 0), number_cell(row, column)});
  }
  if (times.rows.empty()) throw std::logic_error("lesson_times.txt: no row");
  return times;
}

double wheels_of(const std::vector<Row>& rows, double length) {
  const Row &first = rows.front(), &last = rows.back();
  if (length <= first.length) return length - (first.length - first.wheels);
  if (length >= last.length) return length - (last.length - last.wheels);
  std::size_t k = 1;
  while (rows[k].length < length) ++k;
  const Row &low = rows[k - 1], &high = rows[k];
  return low.wheels +
         (high.wheels - low.wheels) * (length - low.length) / (high.length - low.length);
}

}  // namespace

LessonTimes lesson_times(int length_minutes, Topic topic) {
  assert(length_minutes >= 20 && length_minutes <= 600);
  const TimesOfTopic times = read_times(topic);
  constexpr double least_drive = 10;  // a shorter one isn't looked for
  const double least = std::max(length_minutes / 3.0, least_drive);
  const int wheels =
      static_cast<int>(std::floor(std::max(wheels_of(times.rows, length_minutes), least)));
  return {length_minutes - times.reserve - wheels, times.reserve, wheels};
}

}  // namespace loopwright::book
