// Method: the first word says what to do; each deed has a source of its own, but for the list.
#include "command/pupil.hpp"

#include <algorithm>
#include <array>
#include <iostream>

#include "command/book_option.hpp"
#include "command/deeds.hpp"
#include "command/print.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

constexpr std::array deeds{
    Deed{"add", "put a pupil into the book, by a code", pupil_add},
    Deed{"change", "change what is kept of a pupil: home, ticks, test day …", pupil_change},
    Deed{"list", "show the pupils, their hours and lessons", pupil_list},
    Deed{"show", "show what one pupil's lessons tell", pupil_show},
    Deed{"not-met", "show what a pupil has not met yet, and where the nearest is", pupil_not_met},
    Deed{"export", "write all that is kept on a pupil, as JSON or to read", pupil_export},
    Deed{"erase", "delete a pupil, with nothing left", pupil_erase},
    Deed{"purge", "delete the details of those without a lesson for a year", pupil_purge},
    Deed{"backup", "copy the book into one file", pupil_backup},
    Deed{"restore", "put a copy in the place of the book", pupil_restore},
};

/// The start of the latest driven, or the earliest planned lesson; "-" when there is none.
std::string day_of_state(const std::vector<book::Lesson>& lessons, book::LessonState state) {
  std::vector<Date> days;
  for (const book::Lesson& lesson : lessons)
    if (lesson.state == state) days.push_back(day_of(lesson));
  if (days.empty()) return "-";
  const auto [first, last] = std::minmax_element(days.begin(), days.end());
  return road::day_text(state == book::LessonState::driven ? *last : *first);
}

}  // namespace

Exit pupil_list(const Arguments& words) {
  Options app{"Shows the pupils, their hours and lessons.", "loopwright pupil list"};
  std::string book_file;
  add_book(app, book_file);
  if (!parse(app, words)) return Exit::done;
  const book::Book book = open_book(book_file, book::Opening::must_be_there);
  Table table({"pupil", "lessons", "hours", "last driven", "next planned", "test"});
  for (const book::Pupil& pupil : book::pupils_of(book)) {
    const auto lessons = book::lessons_of(book, pupil.code);
    const book::Hours hours = book::hours_of(lessons);
    table.add({pupil.code, std::to_string(hours.lessons), fixed(hours.lesson_minutes / 60.0, 1),
               day_of_state(lessons, book::LessonState::driven),
               day_of_state(lessons, book::LessonState::planned),
               pupil.test_day ? road::day_text(*pupil.test_day) : "-"});
  }
  if (table.empty()) {
    std::cout << book.file().string() << ": no pupils yet; 'loopwright pupil add CODE' adds one\n";
  } else {
    table.print(std::cout);
  }
  return Exit::done;
}

Exit pupil(const Arguments& words) {
  return run_deed(
      "pupil",
      "Keeps pupils in a book of your own: by a code, with what planning needs and no more.", deeds,
      words);
}

}  // namespace loopwright::command
