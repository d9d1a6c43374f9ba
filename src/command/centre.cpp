// Method: the first word says what to do. What is said is read as --keep-off reads it, before the book is opened.
#include <array>
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/deeds.hpp"
#include "command/folded.hpp"
#include "command/keep_off_words.hpp"
#include "command/note.hpp"
#include "command/print.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/book/centres.hpp"
#include "loopwright/book/day_copy.hpp"
#include "loopwright/book/school.hpp"
#include "loopwright/command/command.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

constexpr std::size_t most_centre_name = 60;

std::string centre_name(const std::string& said) {
  const std::string name(trim(said));
  const bool fits = bytes_of(name, most_centre_name) == name.size();
  if (!name.empty() && fits && printable(name) == name) return name;
  throw UsageError("NAME is what you call the test centre, up to " +
                   std::to_string(most_centre_name) + " letters, not " + as_given(said));
}

/// Hours that can be read and come at all.
void need_hours(const std::string& hours) {
  const hours::Timetable times(hours);
  if (!times.readable())
    throw UsageError("--hours takes hours such as \"Mo-Fr 08:00-16:30\", not " + as_given(hours));
  const hours::Setting nowhere;
  if (times.never_changes() && times.at(Instant{}, nowhere).in_force == hours::Tri::no)
    throw UsageError("--hours: " + as_given(hours) +
                     " is at no time, so nothing would be kept off; 'loopwright centre drop' takes "
                     "a test centre out");
}

Exit keep_centre_said(const Arguments& words) {
  Options app{
      "Keeps the surroundings of a test centre, which mock tests keep off at the hours of tests. "
      "Said again with a later --since it holds from that day on.",
      "loopwright centre keep"};
  std::string name, outline, hours, since, book_file;
  app.add_option("NAME", name, "what you call it")->required();
  app.add_option("--outline", outline, "its surroundings: LAT,LON;LAT,LON;LAT,LON, or more corners")
      ->required();
  app.add_option("--hours", hours, "the hours of tests, such as \"Mo-Fr 08:00-16:30\"")->required();
  app.add_option("--since", since,
                 "the first day on which that is so, 2026-11-28 (default: today)");
  add_book(app, book_file);
  if (!parse(app, words)) return Exit::done;
  book::Centre centre{centre_name(name), outline, hours,
                      since.empty() ? today_of("") : day_of("--since", since)};
  constexpr std::size_t least_corners = 3;
  if (split(outline, ';').size() < least_corners)
    throw UsageError("--outline takes three corners or more, LAT,LON;LAT,LON;LAT,LON, not " +
                     as_given(outline));
  need_hours(hours);
  read_outline("--outline", outline);
  book::Book book = open_book(book_file, book::Opening::may_make);
  book::need_no_day_copy(book);
  book::keep_centre(book, centre);
  print_folded(std::cout, 0,
               centre.name + ": kept; mock tests from " + road::day_text(centre.since) +
                   " on keep off its surroundings, " + centre.hours);
  return Exit::done;
}

Exit list_centres(const Arguments& words) {
  Options app{"Lists the surroundings of test centres that mock tests keep off.",
              "loopwright centre list"};
  std::string book_file;
  add_book(app, book_file);
  if (!parse(app, words)) return Exit::done;
  const book::Book book = open_book(book_file, book::Opening::must_be_there);
  const bool in_school = book::is_address(book.file().string());
  std::vector<std::string> heads{"since", "hours of tests", "test centre", "outline"};
  if (in_school) heads.insert(heads.begin() + 3, "kept by");
  Table table(heads);
  for (const book::Centre& one : book::centres(book)) {
    std::vector<std::string> row{road::day_text(one.since), one.hours, one.name, one.outline};
    if (in_school) row.insert(row.begin() + 3, one.kept_by.empty() ? "the office" : one.kept_by);
    table.add(row);
  }
  if (table.empty())
    std::cout << "no test centre is kept; 'loopwright centre keep --help'\n";
  else
    table.print(std::cout);
  return Exit::done;
}

Exit drop_centre_said(const Arguments& words) {
  Options app{"Takes a test centre out of the book, with all its days.", "loopwright centre drop"};
  std::string name, book_file;
  app.add_option("NAME", name, "as 'centre list' has it")->required();
  add_book(app, book_file);
  if (!parse(app, words)) return Exit::done;
  book::Book book = open_book(book_file, book::Opening::must_be_there);
  book::need_no_day_copy(book);
  if (book::drop_centre(book, name) == 0)
    throw UsageError("the book keeps no test centre " + as_given(name) +
                     "; 'loopwright centre list' shows them");
  std::cout << name << ": taken out\n";
  return Exit::done;
}

constexpr std::array centre_deeds{
    Deed{"keep", "keep the surroundings of a test centre, and the hours of tests",
         keep_centre_said},
    Deed{"list", "list what is kept", list_centres},
    Deed{"drop", "take one out", drop_centre_said},
};

}  // namespace

Exit centre(const Arguments& words) {
  return run_deed("centre", "Keeps the surroundings of test centres, which mock tests keep off.",
                  centre_deeds, words);
}

}  // namespace loopwright::command
