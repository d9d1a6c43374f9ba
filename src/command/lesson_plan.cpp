// Method:
//   1. The words of the wish are filled up from the book; what other lessons drove of quiet streets is its ledger.
//   2. Loops are looked for and proved as `loops` does it; the book keeps the first of them. What the book proposes is
//      held to the map first (next_plan.hpp).
//   3. With --loops nothing is looked for: a loop that was found before is kept (picked_loop.hpp).
//   4. Clashes with what the book has of that day are told before anything is looked for (booked.hpp).
#include <algorithm>
#include <cmath>
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/booked.hpp"
#include "command/effort_options.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/lesson.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/lesson_words_of_pupil.hpp"
#include "command/mock_plan.hpp"
#include "command/next_plan.hpp"
#include "command/picked_loop.hpp"
#include "command/print.hpp"
#include "command/tell_plan.hpp"
#include "command/to_mind.hpp"
#include "command/wish_of_words.hpp"
#include "command/words_of_wish.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/store/area.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::command {
namespace {

Exit run(book::Book& book, PlanJob& job) {
  return tell_and_keep(book, job, find_plan(book, job, std::cout));
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
  std::string code, book, length, wish_file, keep_wish, output, loops, loop;
  AreaTexts area;
  WishWords words;
  EffortTexts effort;
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
  app.add_option("--keep-wish", texts.keep_wish, "file to write these words into, for --wish");
  add_effort(app, texts.effort);
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
  for (const auto& [said, name] :
       {std::pair(texts.next, "next"), std::pair(texts.mock, "mock"),
        std::pair(texts.effort.quick, "quick"), std::pair(texts.effort.thorough, "thorough"),
        std::pair(!texts.keep_wish.empty(), "keep-wish")})
    if (said)
      throw UsageError(
          "--loops: the wish is that of the loop file, and nothing is looked for; leave out --" +
          std::string(name));
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
  for (const std::string& file : {texts.output, texts.keep_wish})
    if (!file.empty()) need_folder_of(file);
  return true;
}

/// The words as they were said, not those that the book adds.
void keep_wish(const PlanTexts& texts) {
  if (texts.keep_wish.empty()) return;
  need_two_files(texts.keep_wish, texts.output);
  store::write_whole(texts.keep_wish, texts.words.file_text());
  std::cout << texts.keep_wish << ": written; --wish " << texts.keep_wish
            << " asks for the same again\n";
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
  job.ask.effort = ask.effort;
  if (job.ask.start)
    job.number = planned_then(record.lessons, start_there(job.ask.start, job.area.area));
  tell_given_way(std::cout, ask.pupil, wish::all_wants(job.ask.wish));
  return run(book, job);
}

void tell_other_level(const wish::Wish& wish, const book::Pupil& pupil, const PupilRecord& record) {
  const int level = book::wish_level(book::level_now(scheme_kept(pupil), record.lessons));
  if (level != wish.level)
    print_folded(std::cout, 0,
                 "note: its times are those of level " + std::to_string(wish.level) +
                     "; by the record " + pupil.code + " is planned for at level " +
                     std::to_string(level));
}

std::string times_as_long(double pace) {
  return fixed(pace, 2) + " times as long as usual";
}

/// A loop that was looked for at another pace than the pupil's: timed and proved anew when it still does all that is asked
/// then, else told.
FoundPlan at_own_pace(const book::Book& book, PlanJob& job, const PupilRecord& record,
                      FoundPlan found) {
  const double own = pace_at_start(job.ask.words, record.pace);
  if (fixed(own, 2) == fixed(job.ask.wish.pace, 2)) return found;
  PlanJob timed = job;
  wish::Wish wish = job.ask.wish;
  wish.pace = read_pace(fixed(own, 2));
  timed.ask = ask_of(words_of(wish, job.ask.words.one("home")->text, "the loop file"));
  timed.ask.wish = std::move(wish);
  KeptPlan again = keep_drive(book, timed, found.text);
  const std::string pace = job.code + "'s drives take " + times_as_long(own);
  if (!again.found) {
    print_folded(std::cout, 0,
                 "note: its times are for drives that take " + times_as_long(job.ask.wish.pace) +
                     "; by the record " + pace + ", and so it doesn't fit: " + again.why_not);
    return found;
  }
  print_folded(std::cout, 0, "note: by the record " + pace + ": timed and proved anew for that");
  job = std::move(timed);
  return std::move(*again.found);
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
  KeptPlan kept = picked_loop(
      book, job, {pupil, record, texts.loops, number, home == nullptr ? "" : home->text});
  if (!kept.found) {
    print_folded(std::cout, 0,
                 "loop " + std::to_string(number) + " can't be " + pupil.code +
                     "'s lesson: " + kept.why_not + "; nothing is planned");
    return Exit::wish_not_met;
  }
  const wish::Wish& wish = kept.found->answer.wish;
  job.length.minutes = texts.length.empty() ? std::max(length_said(""), wish.minutes.value_or(0))
                                            : length_said(texts.length);
  tell_clashes_of_plan(std::cout, book, job.area,
                       {job.code, job.number, wish.start, job.length.minutes,
                        home_said(home == nullptr ? "" : home->text, pupil), ""});
  tell_given_way(std::cout, pupil, wish::all_wants(wish));
  tell_other_level(wish, pupil, record);
  const FoundPlan found = at_own_pace(book, job, record, std::move(*kept.found));
  need_room(found.answer.loops.front(), job.length);
  return tell_and_keep(book, job, found);
}

}  // namespace

Exit lesson_plan(const Arguments& words) {
  PlanTexts texts;
  if (!parse_plan(words, texts)) return Exit::done;
  book::Book book = open_book(texts.book, book::Opening::must_be_there);
  for (const std::string& file : {texts.output, texts.keep_wish})
    if (!file.empty())
      need_own_file(file,
                    {book.file(), texts.area.area, texts.area.notes, texts.wish_file, texts.loops});
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.code));
  if (!texts.loops.empty()) return run_picked(book, pupil, texts);
  keep_wish(texts);
  const NextAsk ask{pupil, texts.area, std::move(texts.words), texts.length,
                    effort_of(texts.effort)};
  tell_clashes_of_plan(std::cout, book, ask.area,
                       meant_by(ask, book::lessons_of(book, pupil.code)));
  if (texts.mock) return run_mock(book, plan_mock(book, ask), texts.output);
  if (texts.next) return run_next(book, plan_next(book, ask), texts.output);
  return run_said(book, ask, texts.output);
}

}  // namespace loopwright::command
