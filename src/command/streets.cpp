// Method: the ledger's most used streets of the days that end with today, named by the area; beside each what caps.txt
// leaves of it today and in the month. Then the closures and complaints that the notes tell.
#include <algorithm>
#include <array>
#include <iostream>
#include <optional>
#include <span>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/ground.hpp"
#include "command/print.hpp"
#include "command/shut_notes.hpp"
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

struct StreetsJob {
  AreaTexts area;
  std::string book;
  Date first, last;  ///< days, both counted
  std::size_t most = 0;
};

std::optional<StreetsJob> job_of(const Arguments& words) {
  Options app{
      "Shows which quiet streets your drives use most, over all pupils, and how often each may "
      "still be driven "
      "on the last day and in the 30 that end with it. A street counts by the part of it that is "
      "driven most.",
      "loopwright streets"};
  StreetsJob job;
  std::string today, days = "30", rows = "20";
  app.add_option("AREA", job.area.area, "area file")->required();
  add_book(app, job.book);
  app.add_option("--notes", job.area.notes,
                 "notes file: tells the roads that your notes shut, too, with what you remarked");
  app.add_option("--days", days, "so many days, the last of them today (default: 30)");
  app.add_option("--today", today, "date, 2026-11-28 (default: today)");
  app.add_option("--rows", rows, "at most so many streets (default: 20)");
  if (!parse(app, words)) return std::nullopt;
  const int back = whole_number("--days", days, days_allowed);
  job.most = static_cast<std::size_t>(whole_number("--rows", rows, rows_allowed));
  job.last = today_of(today);
  job.first = date_from_days(days_since_epoch(job.last) - back + 1);
  return job;
}

/// How often a way may still be driven: on the day, and in the month that ends with it.
std::array<std::string, 2> left_of(std::span<const wish::StreetUse> uses, std::int64_t way) {
  const book::LedgerCaps caps = book::ledger_caps();
  const auto use = std::ranges::find(uses, way, &wish::StreetUse::way);
  const int today = use == uses.end() ? 0 : use->today;
  const int month = use == uses.end() ? 0 : use->month;
  return {std::to_string(std::max(0, std::min(caps.day - today, caps.month - month))),
          std::to_string(std::max(0, caps.month - month))};
}

void print_streets(const book::Book& book, const road::Roads& map, const StreetsJob& job) {
  Table table(
      {"times", "drives", "last", "left that day", "left in 30 days", "street", "on the map"});
  auto used = book::most_used(book, job.first, job.last);
  used.resize(std::min(used.size(), job.most));
  const auto uses = book::street_use(book, {.day = job.last});
  for (const book::StreetTotal& street : used) {
    const auto [today, month] = left_of(uses, street.way);
    table.add({std::to_string(street.times), std::to_string(street.lessons),
               road::day_text(street.last), today, month, name_of(map, street.way),
               "way/" + std::to_string(street.way)});
  }
  if (table.empty())
    std::cout << "no quiet street was driven from " << road::day_text(job.first) << " to "
              << road::day_text(job.last) << '\n';
  else
    table.print(std::cout);
}

}  // namespace

Exit streets(const Arguments& words) {
  const std::optional<StreetsJob> job = job_of(words);
  if (!job) return Exit::done;
  const book::Book book = open_book(job->book, book::Opening::must_be_there);
  const Ground ground(job->area);
  print_streets(book, ground.map(), *job);
  tell_shut_notes(std::cout, ground, std::nullopt, {});
  return Exit::done;
}

}  // namespace loopwright::command
