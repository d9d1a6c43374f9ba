#include "page/ledger_file.hpp"

#include <fstream>

#include "loopwright/book/school.hpp"
#include "loopwright/book/streets.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::page {

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
    if (use.today > 0) out << today << ' ' << use.way << ' ' << use.today << '\n';
    if (use.month > use.today)
      out << before << ' ' << use.way << ' ' << use.month - use.today << '\n';
  }
  return true;
}

}  // namespace loopwright::page
