// Method:
//   1. The words of the wish are filled up from the book; what other lessons drove of quiet streets is its ledger.
//   2. Loops are looked for and proved as `loops` does it; the book keeps the first of them. What the book proposes is
//      held to the map first (next_plan.hpp).
//   3. A loop file that was asked for is first noted in the book, for the day on which the pupil is erased.
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "command/lesson.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/lesson_words_of_pupil.hpp"
#include "command/loop_summary.hpp"
#include "command/mock_plan.hpp"
#include "command/next_plan.hpp"
#include "command/plan_job.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

void write_loop_file(book::Book& book, const PlanJob& job, int number, const std::string& text) {
  if (job.output.empty()) return;
  write_for_pupil(book, {job.code, number}, job.output, text);
  std::cout << job.output.string()
            << ": written; it gives the door away: treat it as personal data\n";
}

void tell_planned(const PlanJob& job, int number, const Instant& start) {
  if (!job.length.sum.empty()) print_folded(std::cout, 0, job.length.sum);
  const std::string lesson = std::to_string(number);
  print_folded(std::cout, 0,
               job.code + ", lesson " + lesson + ", " + spoken_moment(start) +
                   ": planned; 'loopwright lesson print " + job.code + " --lesson " + lesson +
                   "' writes its card");
}

/// Tells what was found, and keeps it.
Exit tell_and_keep(book::Book& book, const PlanJob& job, const FoundPlan& found) {
  const wish::Answer& answer = found.answer;
  print_summary(std::cout, answer,
                {found.ground->noted().roads, found.ground->setting_of(answer.wish)});
  if (answer.loops.empty()) {
    std::cout << "nothing is planned\n";
    return Exit::wish_not_met;
  }
  std::cout << found.claims << " claims checked, all agree with the map's rules\n";
  const int number = keep_plan(book, job, found);
  tell_planned(job, number, answer.wish.start);
  tell_look_again(std::cout, book, found);
  write_loop_file(book, job, number, found.text);
  return answer.shortfall ? Exit::wish_not_met : Exit::done;
}

Exit run(book::Book& book, PlanJob& job) {
  return tell_and_keep(book, job, find_plan(book, job, std::cout));
}

/// The kept drive at the new start when it still fits, else another.
Exit run_again(book::Book& book, PlanJob& job) {
  const book::Lesson lesson = book::lesson_of(book, job.code, job.number);
  KeptPlan kept = keep_drive(book, job, lesson.plan.loop_file);
  const std::string at = spoken_moment(job.ask.wish.start);
  if (kept.found) {
    print_folded(std::cout, 0, "the same drive as before, timed and proved for " + at);
    return tell_and_keep(book, job, *kept.found);
  }
  print_folded(std::cout, 0,
               "the kept drive doesn't fit " + at + ": " + kept.why_not + "; planned anew");
  return run(book, job);
}

/// What the book proposes, as far as the map has it.
Exit run_next(book::Book& book, NextPlan next, const std::string& output) {
  tell_proposal(std::cout, next);
  next.job.output = output;
  return tell_and_keep(book, next.job, next.found);
}

Exit run_mock(book::Book& book, MockPlan mock, const std::string& output) {
  tell_mock(std::cout, mock);
  mock.job.output = output;
  return tell_and_keep(book, mock.job, mock.found);
}

/// "15:10" on the day of the lesson, or a date and time.
std::string start_of(const std::string& text, const book::Lesson& lesson) {
  const std::string on_the_day = road::day_text(day_of(lesson)) + "T" + text;
  return text.size() == 5 && read_time(on_the_day) ? on_the_day : text;
}

}  // namespace

Exit lesson_plan(const Arguments& words) {
  Options app{
      "Plans a drive for a pupil, with the words of 'loops', and keeps it in the book. Home, level "
      "and what is "
      "kept off come from the book when they aren't said.",
      "loopwright lesson plan"};
  PlanJob job{};
  WishWords wish_words;
  std::string book_file, length, wish_file, output;
  bool next = false, mock = false;
  app.add_option("CODE", job.code, "the pupil's code")->required();
  add_area(app, job.area);
  add_book(app, book_file);
  app.add_option("--length", length,
                 "minutes of the lesson, talk and all, 20 to 600 (default: 60)");
  wish_words.add_options(app);
  app.add_flag("--next", next,
               "what 'lesson next' proposes, as far as the map has it from the door");
  app.add_flag(
      "--mock", mock,
      "a mock test: about 40 minutes of mixed roads with stops, a manoeuvre and finding the "
      "way; --keep-off the surroundings of your test centres at the hours of tests");
  app.add_option("--wish", wish_file, "file of words of the wish, as 'loops' reads it");
  app.add_option("-o,--output", output, "write the loop file, too");
  app.footer(kinds_help());
  if (!parse(app, words)) return Exit::done;
  wish_words.settle(wish_file);
  job.output = output;
  if (!output.empty()) need_folder_of(output);
  book::Book book = open_book(book_file, book::Opening::must_be_there);
  if (!output.empty())
    need_own_file(output, {book.file(), job.area.area, job.area.notes, wish_file});
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", job.code));
  job.code = pupil.code;
  if (next && mock) throw UsageError("--mock is no topic that is proposed; leave out --next");
  if (mock)
    return run_mock(book, plan_mock(book, {pupil, job.area, std::move(wish_words), length}),
                    output);
  if (next)
    return run_next(book, plan_next(book, {pupil, job.area, std::move(wish_words), length}),
                    output);
  const PupilRecord record = record_of(book, pupil.code);
  job.length = fill_from_book(wish_words, pupil, record, length);
  job.ask = ask_of(std::move(wish_words));
  if (job.ask.start) job.number = planned_then(record.lessons, job.ask.start->civil);
  return run(book, job);
}

Exit lesson_again(const Arguments& words) {
  Options app{
      "Plans the same lesson for another start: by the same drive when that still fits (hours, "
      "lanes, "
      "minutes, the ledger), else by another, and says why.",
      "loopwright lesson again"};
  LessonTexts texts;
  std::string start;
  add_lesson(app, texts);
  app.add_option("--start", start, "15:10 on the same day, or a date and time, 2026-11-28T15:10")
      ->required();
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
  return run_again(book, job);
}

}  // namespace loopwright::command
