// Method: what is said (a line, a file, answers) is laid over the planned passes, and written in one piece: what is
// told as logged is on the disk.
#include <unistd.h>

#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/lesson.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/lesson_questions.hpp"
#include "command/tell_logged.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/log_words.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/record_mark.hpp"
#include "loopwright/book/scheme.hpp"
#include "loopwright/book/seen.hpp"
#include "loopwright/file/load_text.hpp"

namespace loopwright::command {
namespace {

struct LogTexts {
  LessonTexts lesson;
  std::string line, file, start, length = "60", area;
  bool yes = false;
};

std::string log_help() {
  std::string text =
      "What is said, parted by ';' or line ends:\n"
      "  roundabout right 2 pedals   a practice: level seen 1 to 5, help (talked, guided, "
      "prompted, alone), words, wheel "
      "or pedals where you stepped in (x2: twice), fault HEADING GRADE, and behind a colon why\n"
      "  zebra x3 4                  so many of them\n"
      "  rest 4                      the level of all else that was planned\n"
      "  not level-crossing          wasn't driven; 'not driven' alone: nothing was\n"
      "  skill mirrors 4             a level of a skill; fault HEADING; words, wheel or pedals: "
      "anywhere\n"
      "  minutes 52; home 90         away from the door; practised at home since the last lesson\n"
      "  light dusk; weather dull-wet; traffic heavy; mock, or mock 4 0 0 "
      "(driving, serious, dangerous faults; alone: those you say); of a lesson that wasn't planned "
      "as "
      "one: mock unplanned\n"
      "  sheet KD                    the two letters printed on the sheet: marks of an older one "
      "are "
      "refused\n"
      "  seen A C; seen B: 20        looked at on the ground, by the letters of the sheet: as the "
      "map "
      "has it, or what stands there; seen all\n"
      "  said: …; remark: …; goal: …; reached: …   the pupil's words, yours, for next time, done\n"
      "Skills:";
  for (const book::Skill& skill : book::schemes().front().skills)
    text.append(" ").append(skill.code);
  text += "\nHeadings:";
  for (const book::Heading& heading : book::headings()) text.append(" ").append(heading.code);
  return text + "\n";
}

bool parse_log(const Arguments& words, LogTexts& texts) {
  Options app{
      "Says what came of a lesson. All planned passes count as driven; only what was different is "
      "said.",
      "loopwright lesson log"};
  add_lesson(app, texts.lesson);
  app.add_option("LINE", texts.line,
                 "what is said, in one line; nothing and no --file: you are asked");
  app.add_option("--file", texts.file, "text file of what is said");
  app.add_option("--start", texts.start, "date and time of a lesson that wasn't planned here");
  app.add_option("--length", texts.length, "with --start: its minutes (default: 60)");
  app.add_option("--area", texts.area,
                 "with --start: area file whose clock it is by (default: of the last one planned, "
                 "else Great Britain's)");
  app.add_flag("--yes", texts.yes, still_to_come_help);
  app.footer(log_help());
  if (!parse(app, words)) return false;
  if (!texts.line.empty() && !texts.file.empty())
    throw UsageError("--file: give a line or a file, not both");
  if (!texts.area.empty() && texts.start.empty())
    throw UsageError("--area goes with --start: a planned lesson has its own");
  if (!texts.start.empty() && !texts.lesson.lesson.empty())
    throw UsageError(
        "--start is for a lesson that isn't in the book, --lesson for one that is: leave one out");
  return true;
}

/// Signs alone, or comments, are a slip: all that was planned would be logged as driven.
book::Said something_said(const std::string& text) {
  book::Said said = book::read_log(text);
  if (said.clauses == 0 && !said.not_driven)
    throw UsageError(
        "nothing is said of the lesson; when all was as planned say how long it took, such as "
        "'minutes 52'");
  return said;
}

book::Said said_in(const LogTexts& texts, const ToBeLogged& lesson) {
  if (!texts.line.empty()) return something_said(texts.line);
  if (!texts.file.empty()) {
    try {
      return something_said(file::load_text(texts.file, {"file of a lesson's log", {}}));
    } catch (const UsageError& error) {
      throw InputError(texts.file + ": " + error.what());
    }
  }
  if (::isatty(STDIN_FILENO) == 0)
    throw UsageError("say what came of the lesson in a line, or name its file with --file");
  return ask_log(std::cin, std::cout, lesson);
}

/// The passes to be filled: of a plan all of them; of a log those that had been planned.
std::vector<book::LessonPass> planned_of(const book::Lesson& lesson) {
  auto passes = lesson.state == book::LessonState::driven ? lesson.log.passes : lesson.plan.passes;
  std::erase_if(passes, [](const book::LessonPass& pass) { return pass.place.empty(); });
  return passes;
}

/// One lesson of a pupil at a time: said twice it is the same one, such as after an answer that was lost.
void need_new(const std::vector<book::Lesson>& lessons, const std::string& code,
              const CivilTime& start) {
  for (const book::Lesson& lesson : lessons) {
    if (lesson.state == book::LessonState::not_driven || lesson.plan.start.civil() != start)
      continue;
    const bool driven = lesson.state == book::LessonState::driven;
    throw UsageError("--start: " + code + "'s lesson " + std::to_string(lesson.number) +
                     " begins then and is " + (driven ? "logged" : "planned") + "; --lesson " +
                     std::to_string(lesson.number) + " logs it" + (driven ? " anew" : ""));
  }
}

/// A lesson that wasn't planned here.
Exit log_besides(book::Book& book, const book::Pupil& pupil, const LogTexts& texts) {
  const std::vector<book::Lesson> lessons = book::lessons_of(book, pupil.code);
  book::Plan plan;
  plan.start = moment(time_of("--start", texts.start), zone_of_lessons(lessons, texts.area));
  need_new(lessons, pupil.code, plan.start.civil());
  plan.length_minutes = whole_number("--length", texts.length, {10, 600});
  if (!texts.yes) need_begun("this lesson of " + pupil.code, plan.start);
  const auto open = book::open_goals(lessons);
  const book::Said said = said_in(texts, {{}, plan, open});
  if (said.not_driven) throw UsageError("'not driven': there is no lesson planned at that start");
  book::need_open_goals(said, open);
  book::facts_seen(said.seen, {}, plan.start.civil().date);  // it has no sheet
  const book::Log log = book::filled({}, said, scheme_kept(pupil), plan.start.civil().date);
  tell_logged(pupil.code, book::add_driven_lesson(book, pupil.code, plan, log), plan.start, log,
              scheme_kept(pupil));
  return Exit::done;
}

}  // namespace

Exit lesson_log(const Arguments& words) {
  LogTexts texts;
  if (!parse_log(words, texts)) return Exit::done;
  book::Book book = open_book(texts.lesson.book, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.lesson.code));
  if (!texts.start.empty()) return log_besides(book, pupil, texts);
  const auto lessons = book::lessons_of(book, pupil.code);
  const book::Lesson lesson = book::lesson_of(
      book, pupil.code, lesson_meant(lessons, pupil.code, lesson_number(texts.lesson)).number);
  const std::string which = pupil.code + ", lesson " + std::to_string(lesson.number);
  const bool asks = texts.line.empty() && texts.file.empty();
  if (asks && !texts.yes) need_begun(which, lesson.plan.start);
  const std::vector<book::LessonPass> planned = planned_of(lesson);
  const auto open = book::open_goals(lessons, lesson.number);
  const book::Said said = said_in(texts, {planned, lesson.plan, open});
  if (said.not_driven) {
    book::drop_lesson(book, {pupil.code, lesson.number, book::mark_of(lesson)});
    std::cout << which << " wasn't driven; its streets count no more\n";
    return Exit::done;
  }
  if (!texts.yes) need_begun(which, lesson.plan.start);
  book::need_mock_meant(said, lesson.plan);
  book::need_same_sheet(said, lesson.plan);
  book::need_open_goals(said, open);
  book::Log log = book::filled(planned, said, scheme_kept(pupil), day_of(lesson));
  log.seen = book::facts_seen(said.seen, lesson.plan.to_check, day_of(lesson));
  book::log_lesson(book, {pupil.code, lesson.number, book::mark_of(lesson)}, log);
  tell_logged(pupil.code, lesson.number, lesson.plan.start, log, scheme_kept(pupil));
  return Exit::done;
}

}  // namespace loopwright::command
