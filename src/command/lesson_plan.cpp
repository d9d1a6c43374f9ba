// Method:
//   1. The words of the wish are filled up from the book; what other lessons drove of quiet streets is its ledger.
//   2. Loops are looked for and proved as `loops` does it; the book keeps the first of them. What the book proposes is
//      held to the map first (next_plan.hpp).
//   3. With --loops nothing is looked for: a loop that was found before is kept (picked_loop.hpp).
//   4. A loop file that was asked for is first noted in the book, for the day on which the pupil is erased.
#include <algorithm>
#include <cmath>
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
#include "command/picked_loop.hpp"
#include "command/plan_job.hpp"
#include "command/wish_of_words.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/base/error.hpp"
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

/// What was typed for a plan.
struct PlanTexts {
  std::string code, book, length, wish_file, output, loops, loop;
  AreaTexts area;
  WishWords words;
  bool next = false, mock = false;
};

void add_plan_options(Options& app, PlanTexts& texts) {
  app.add_option("CODE", texts.code, "the pupil's code")->required();
  add_area(app, texts.area);
  add_book(app, texts.book);
  app.add_option("--length", texts.length,
                 "minutes of the lesson, talk and all, 20 to 600 (default: 60)");
  texts.words.add_options(app);
  app.add_flag("--next", texts.next,
               "what 'lesson next' proposes, as far as the map has it from the door");
  app.add_flag(
      "--mock", texts.mock,
      "a mock test: about 40 minutes of mixed roads with stops, a manoeuvre and finding the "
      "way; --keep-off the surroundings of your test centres at the hours of tests");
  app.add_option("--loops", texts.loops,
                 "a loop file: nothing is looked for, one of its loops is the lesson, as it was "
                 "asked for there");
  app.add_option("--loop", texts.loop, "with --loops: number of the loop (default: 1)");
  app.add_option("--wish", texts.wish_file, "file of words of the wish, as 'loops' reads it");
  app.add_option("-o,--output", texts.output, "write the loop file, too");
  app.footer(kinds_help());
}

/// A loop file says its own wish.
void need_no_wish(const PlanTexts& texts) {
  if (texts.loops.empty()) {
    if (!texts.loop.empty())
      throw UsageError("--loop names a loop of a loop file: give --loops as well");
    return;
  }
  for (const std::string& name : texts.words.names_said())
    if (name != "home")
      throw UsageError("--loops: the wish is that of the loop file; leave out --" + name);
  if (texts.next || texts.mock)
    throw UsageError("--loops: the wish is that of the loop file; leave out --" +
                     std::string(texts.next ? "next" : "mock"));
}

/// False when help was asked for. Throws UsageError for words that don't go together.
bool parse_plan(const Arguments& words, PlanTexts& texts) {
  Options app{
      "Plans a drive for a pupil, with the words of 'loops', and keeps it in the book. Home, level "
      "and what is "
      "kept off come from the book when they aren't said.",
      "loopwright lesson plan"};
  add_plan_options(app, texts);
  if (!parse(app, words)) return false;
  texts.words.settle(texts.wish_file);
  need_no_wish(texts);
  if (texts.next && texts.mock)
    throw UsageError("--mock is no topic that is proposed; leave out --next");
  if (!texts.output.empty()) need_folder_of(texts.output);
  return true;
}

Exit run_said(book::Book& book, const NextAsk& ask, const std::string& output) {
  const PupilRecord record = record_of(book, ask.pupil.code);
  WishWords words = ask.words;
  PlanJob job{};
  job.code = ask.pupil.code;
  job.area = ask.area;
  job.output = output;
  job.length = fill_from_book(words, ask.pupil, record, ask.length);
  job.ask = ask_of(std::move(words));
  if (job.ask.start) job.number = planned_then(record.lessons, job.ask.start->civil);
  return run(book, job);
}

void tell_other_level(const wish::Wish& wish, const book::Pupil& pupil, const PupilRecord& record) {
  const int level = book::wish_level(book::level_now(scheme_kept(pupil), record.lessons));
  if (level != wish.level)
    print_folded(std::cout, 0,
                 "its times are those of level " + std::to_string(wish.level) + "; by the record " +
                     pupil.code + " is planned for at level " + std::to_string(level));
}

/// Driving and stops as they are likely must fit into the lesson.
void need_room(const wish::Loop& loop, const LessonLength& length) {
  const auto away = std::lround((loop.seconds.likely + loop.stop_seconds) / 60);
  if (away > length.minutes)
    throw UsageError("--length: the loop takes " + std::to_string(away) +
                     " min, longer than a lesson of " + std::to_string(length.minutes) +
                     "; give a greater --length, or look for a shorter loop");
}

/// A loop of a loop file, as it is.
Exit run_picked(book::Book& book, const book::Pupil& pupil, const PlanTexts& texts) {
  const Said* home = texts.words.one("home");
  const PupilRecord record = record_of(book, pupil.code);
  const int number = texts.loop.empty() ? 1 : whole_number("--loop", texts.loop, {1, 999});
  PlanJob job{};
  job.code = pupil.code;
  job.area = texts.area;
  job.output = texts.output;
  const KeptPlan kept = picked_loop(
      book, job, {pupil, record, texts.loops, number, home == nullptr ? "" : home->text});
  if (!kept.found) {
    print_folded(std::cout, 0,
                 "loop " + std::to_string(number) + " can't be " + pupil.code +
                     "'s lesson: " + kept.why_not + "; nothing is planned");
    return Exit::wish_not_met;
  }
  const int away = kept.found->answer.wish.minutes.value_or(0);
  job.length.minutes =
      texts.length.empty() ? std::max(length_said(""), away) : length_said(texts.length);
  need_room(kept.found->answer.loops.front(), job.length);
  tell_other_level(kept.found->answer.wish, pupil, record);
  return tell_and_keep(book, job, *kept.found);
}

/// "15:10" on the day of the lesson, or a date and time.
std::string start_of(const std::string& text, const book::Lesson& lesson) {
  const std::string on_the_day = road::day_text(day_of(lesson)) + "T" + text;
  return text.size() == 5 && read_time(on_the_day) ? on_the_day : text;
}

}  // namespace

Exit lesson_plan(const Arguments& words) {
  PlanTexts texts;
  if (!parse_plan(words, texts)) return Exit::done;
  book::Book book = open_book(texts.book, book::Opening::must_be_there);
  if (!texts.output.empty())
    need_own_file(texts.output,
                  {book.file(), texts.area.area, texts.area.notes, texts.wish_file, texts.loops});
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.code));
  if (!texts.loops.empty()) return run_picked(book, pupil, texts);
  const NextAsk ask{pupil, texts.area, std::move(texts.words), texts.length};
  if (texts.mock) return run_mock(book, plan_mock(book, ask), texts.output);
  if (texts.next) return run_next(book, plan_next(book, ask), texts.output);
  return run_said(book, ask, texts.output);
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
