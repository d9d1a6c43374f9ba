// Method: the words that the book keeps of a lesson's wish, with another start; the same drive when it does all of it
// then, else a search.
#include <iostream>

#include "command/book_option.hpp"
#include "command/booked.hpp"
#include "command/effort_options.hpp"
#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "command/lesson.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/tell_plan.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

/// The kept drive at the new start when it still fits, else another.
Exit run_again(book::Book& book, PlanJob& job) {
  const book::Lesson lesson = book::lesson_of(book, job.code, job.number);
  if (lesson.plan.loop_file.empty())
    return tell_and_keep(book, job, find_plan(book, job, std::cout));
  KeptPlan kept = keep_drive(book, job, lesson.plan.loop_file);
  const std::string at = spoken_moment(job.ask.wish.start);
  if (kept.found) {
    print_folded(std::cout, 0, "the same drive as before, timed and proved for " + at);
    return tell_and_keep(book, job, *kept.found);
  }
  print_folded(std::cout, 0,
               "the kept drive doesn't fit " + at + ": " + kept.why_not + "; planned anew");
  return tell_and_keep(book, job, find_plan(book, job, std::cout));
}

/// "15:10" on the day of the lesson, or a date and time.
std::string start_of(const std::string& text, const book::Lesson& lesson) {
  const std::string on_the_day = road::day_text(day_of(lesson)) + "T" + text;
  return text.size() == 5 && read_time(on_the_day) ? on_the_day : text;
}

}  // namespace

Exit lesson_again(const Arguments& words) {
  Options app{
      "Plans the same lesson for another start: by the same drive when that still fits (hours, "
      "lanes, "
      "minutes, the ledger), else by another, and says why.",
      "loopwright lesson again"};
  LessonTexts texts;
  std::string start;
  EffortTexts effort;
  add_lesson(app, texts);
  app.add_option("--start", start, "15:10 on the same day, or a date and time, 2026-11-28T15:10")
      ->required();
  add_effort(app, effort);
  if (!parse(app, words)) return Exit::done;
  book::Book book = open_book(texts.book, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.code));
  const auto lessons = book::lessons_of(book, pupil.code);
  const book::Lesson& lesson = lesson_meant(lessons, pupil.code, lesson_number(texts));
  if (lesson.state == book::LessonState::driven || lesson.plan.wish.empty())
    throw UsageError("--lesson: lesson " + std::to_string(lesson.number) + " of " + pupil.code +
                     (lesson.plan.wish.empty() ? " wasn't planned here" : " is driven") +
                     "; plan a new one");
  WishWords wish_words;
  wish_words.take_text(lesson.plan.wish, "the wish of lesson " + std::to_string(lesson.number));
  wish_words.fill("start", start_of(start, lesson), "");
  PlanJob job{pupil.code,
              {lesson.plan.area, lesson.plan.notes, lesson.plan.terms},
              {lesson.plan.length_minutes, ""},
              ask_of(std::move(wish_words)),
              {},
              lesson.number};
  job.ask.effort = effort_of(effort);
  job.mock = book::is_mock_plan(lesson.plan);
  const Said *home = job.ask.words.one("home"), *end = job.ask.words.one("end");
  tell_clashes_of_plan(
      std::cout, book, job.area,
      {job.code, job.number, start_there(job.ask.start, job.area.area), job.length.minutes,
       home == nullptr ? pupil.home : home->text, end == nullptr ? "" : end->text});
  return run_again(book, job);
}

}  // namespace loopwright::command
