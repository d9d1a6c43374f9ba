// Method: the ledger's most used streets of the days that end with today, named by the area; beside each what caps.txt
// leaves of it today and in the month.
#include <algorithm>
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/ground.hpp"
#include "command/print.hpp"
#include "loopwright/book/streets.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

constexpr Between days_allowed{1, 3660}, rows_allowed{1, 1000};

std::string name_of(const road::Roads& roads, std::int64_t way) {
  for (const road::Piece& piece : roads.pieces_of_way(way)) {
    const std::string_view name = roads.text(piece.name);
    return name.empty() ? "an unnamed street" : std::string(name);
  }
  return "no street of this area";
}

}  // namespace

Exit streets(const Arguments& words) {
  Options app{
      "Shows which quiet streets your drives use most, over all pupils. A street counts by the "
      "part of it that is "
      "driven most.",
      "loopwright streets"};
  std::string area_file, book_file, today, days = "30", rows = "20";
  app.add_option("AREA", area_file, "area file")->required();
  add_book(app, book_file);
  app.add_option("--days", days, "so many days, the last of them today (default: 30)");
  app.add_option("--today", today, "date, 2026-11-28 (default: today)");
  app.add_option("--rows", rows, "at most so many streets (default: 20)");
  if (!parse(app, words)) return Exit::done;
  const int back = whole_number("--days", days, days_allowed);
  const auto most = static_cast<std::size_t>(whole_number("--rows", rows, rows_allowed));
  const Date last = today_of(today), first = date_from_days(days_since_epoch(last) - back + 1);
  const book::Book book = open_book(book_file, book::Opening::must_be_there);
  const store::Area area = store::open_area(area_file);
  Table table({"times", "drives", "last", "street", "on the map"});
  auto used = book::most_used(book, first, last);
  used.resize(std::min(used.size(), most));
  for (const book::StreetTotal& street : used)
    table.add({std::to_string(street.times), std::to_string(street.lessons),
               road::day_text(street.last), name_of(area.roads(), street.way),
               "way/" + std::to_string(street.way)});
  if (table.empty())
    std::cout << "no quiet street was driven from " << road::day_text(first) << " to "
              << road::day_text(last) << '\n';
  else
    table.print(std::cout);
  return Exit::done;
}

}  // namespace loopwright::command
