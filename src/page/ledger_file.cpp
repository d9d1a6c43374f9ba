#include "page/ledger_file.hpp"

#include <algorithm>
#include <string>

#include "loopwright/book/school.hpp"
#include "loopwright/book/streets.hpp"
#include "loopwright/file/ledger.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::page {
namespace {

/// So many of them as a line takes: a street at a school's door, or at many pupils' doors, has more, and is as worn out.
std::string line_of(const std::string& day, std::int64_t way, int times) {
  return day + ' ' + std::to_string(way) + ' ' +
         std::to_string(std::min(times, file::most_times_a_line)) + '\n';
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
  std::string text;
  for (const wish::StreetUse& use : uses) {
    if (use.today > 0) text += line_of(today, use.way, use.today);
    if (use.month > use.today) text += line_of(before, use.way, use.month - use.today);
  }
  store::write_whole(file, text);
  return true;
}

}  // namespace loopwright::page
