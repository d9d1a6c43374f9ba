#include "page/ledger_file.hpp"

#include <algorithm>
#include <fstream>

#include "loopwright/book/school.hpp"
#include "loopwright/book/streets.hpp"
#include "loopwright/file/ledger.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::page {
namespace {

/// So many of them as a line takes: a street at a school's door, or at many pupils' doors, has more, and is as worn out.
int in_a_line(int times) {
  return std::min(times, file::most_times_a_line);
}

}  // namespace

bool write_ledger(const std::filesystem::path& book, const Date& day,
                  const std::filesystem::path& file) {
  std::error_code ignored;
  if (book.empty() || (!book::is_address(book.string()) && !std::filesystem::exists(book, ignored)))
    return false;
  const auto uses =
      book::street_use(book::Book::open(book, book::Opening::must_be_there), {.day = day});
  if (uses.empty()) return false;
  const std::string today = road::day_text(day),
                    before = road::day_text(date_from_days(days_since_epoch(day) - 1));
  std::ofstream out(file);
  for (const wish::StreetUse& use : uses) {
    if (use.today > 0) out << today << ' ' << use.way << ' ' << in_a_line(use.today) << '\n';
    if (use.month > use.today)
      out << before << ' ' << use.way << ' ' << in_a_line(use.month - use.today) << '\n';
  }
  return true;
}

}  // namespace loopwright::page
