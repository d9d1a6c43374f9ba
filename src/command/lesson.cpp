// Method: the first word says what to do; each deed has a source of its own, but for the list.
#include "command/lesson.hpp"

#include <algorithm>
#include <array>
#include <iostream>

#include "command/book_option.hpp"
#include "command/deeds.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/print.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

constexpr std::array deeds{
    Deed{"plan", "plan a drive for a pupil, as 'loops' does, and keep it in the book", lesson_plan},
    Deed{"again", "plan the same lesson for another start", lesson_again},
    Deed{"print", "write a planned lesson on paper, as a card or as an exchange file",
         lesson_print},
    Deed{"log", "say what came of a lesson: in a line, a file, or asked for", lesson_log},
    Deed{"unlog", "take back what was logged of a lesson: it is planned again", lesson_unlog},
    Deed{"trace",
         "log a lesson by a recorded drive: what was really passed, and where it left the plan",
         lesson_trace},
    Deed{"next", "propose the next lesson, with reasons", lesson_next},
    Deed{"like-it",
         "after you stepped in: places of the same form, the easiest first, then back to it",
         lesson_like_it},
    Deed{"at-home",
         "practice at home: drives of what the pupil does alone, as a sheet for the family",
         lesson_at_home},
    Deed{"list", "show a pupil's lessons", lesson_list},
};

std::string minutes_of(const book::Lesson& lesson) {
  if (lesson.log.minutes) return std::to_string(*lesson.log.minutes);
  if (lesson.state == book::LessonState::planned && lesson.plan.likely_s > 0)
    return "likely " + fixed(lesson.plan.likely_s / 60, 0);
  return "-";
}

std::string passes_of(const book::Lesson& lesson) {
  const auto& passes =
      lesson.state == book::LessonState::driven ? lesson.log.passes : lesson.plan.passes;
  const auto driven =
      std::count_if(passes.begin(), passes.end(), [](const auto& pass) { return pass.driven; });
  if (lesson.state != book::LessonState::driven) return std::to_string(passes.size());
  return std::to_string(driven) + " of " + std::to_string(passes.size());
}

std::string state_of(const book::Lesson& lesson) {
  const std::string state(name(lesson.state));
  return book::is_mock_plan(lesson.plan) ? state + ", mock test" : state;
}

}  // namespace

Exit lesson_list(const Arguments& words) {
  Options app{"Shows a pupil's lessons.", "loopwright lesson list"};
  std::string code, book_file;
  app.add_option("CODE", code, "the pupil's code")->required();
  add_book(app, book_file);
  if (!parse(app, words)) return Exit::done;
  const book::Book book = open_book(book_file, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", code));
  Table table({"lesson", "start", "length", "state", "minutes out", "passes", "interventions"});
  for (const book::Lesson& lesson : book::lessons_of(book, pupil.code)) {
    int stepped_in = 0;
    for (const book::LessonIntervention& one : lesson.log.interventions) stepped_in += one.count;
    table.add({std::to_string(lesson.number),
               road::day_text(day_of(lesson)) + " " + write_clock(lesson.plan.start),
               std::to_string(lesson.plan.length_minutes), state_of(lesson), minutes_of(lesson),
               passes_of(lesson), std::to_string(stepped_in)});
  }
  if (table.empty())
    std::cout << pupil.code << " has no lessons yet; 'loopwright lesson plan " << pupil.code
              << "' plans one\n";
  else
    table.print(std::cout);
  return Exit::done;
}

Exit lesson(const Arguments& words) {
  return run_deed("lesson", "Plans a pupil's lessons, and keeps what came of them.", deeds, words);
}

}  // namespace loopwright::command
