// Method: the drive that the book still keeps is laid over the same start once more, so that passes and streets are those of the
// plan again; then the book takes the log back and puts the plan in its place, in one piece.
#include <iostream>

#include "command/book_option.hpp"
#include "command/folded.hpp"
#include "command/lesson.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/plan_job.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/drive.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/record_mark.hpp"
#include "loopwright/file/loop_file.hpp"

namespace loopwright::command {
namespace {

/// The one of that number, else the latest of which anything was said. Throws UsageError when there is none.
int number_meant(const std::vector<book::Lesson>& lessons, const std::string& code,
                 std::optional<int> number) {
  if (number) {
    const book::Lesson& lesson = lesson_meant(lessons, code, number);
    if (lesson.state != book::LessonState::planned) return lesson.number;
    throw UsageError("--lesson: lesson " + std::to_string(lesson.number) + " of " + code +
                     " is planned; nothing is logged of it");
  }
  const book::Lesson* latest = nullptr;
  for (const book::Lesson& lesson : lessons)
    if (lesson.state != book::LessonState::planned &&
        (latest == nullptr || lesson.plan.start.unix_s >= latest->plan.start.unix_s))
      latest = &lesson;
  if (latest != nullptr) return latest->number;
  throw UsageError(code + " has no lesson that is logged");
}

/// What the lesson was before it was logged, and why that isn't all of it; empty: it is.
struct Before {
  book::AsPlanned planned;
  std::string why_not;
};

/// The kept drive at the same start, as it was planned.
void find_again(book::Book& book, const std::string& code, const book::Lesson& lesson,
                Before& before) {
  WishWords words;
  words.take_text(lesson.plan.wish, "the wish of lesson " + std::to_string(lesson.number));
  words.fill("start", write_time(lesson.plan.start), "");
  PlanJob job{code,
              {lesson.plan.area, lesson.plan.notes, lesson.plan.terms},
              {lesson.plan.length_minutes, ""},
              ask_of(std::move(words)),
              {},
              lesson.number};
  job.mock = book::is_mock_plan(lesson.plan);
  KeptPlan kept = keep_drive(book, job, lesson.plan.loop_file);
  before.why_not = kept.why_not;
  if (!kept.found) return;
  // It says how good the drive is, which keeping it doesn't; and the printed sheet has its letters.
  kept.found->text = lesson.plan.loop_file;
  before.planned.again = plan_of(book, job, *kept.found);
  before.planned.again->plan.to_check = lesson.plan.to_check;
}

Before before_the_log(book::Book& book, const std::string& code, const book::Lesson& lesson) {
  Before before;
  if (lesson.plan.wish.empty()) return before;
  if (lesson.plan.loop_file.empty()) {
    before.why_not = "a later lesson was logged since, and its drive is gone";
    return before;
  }
  try {
    const wish::Answer answer = file::read_answer(lesson.plan.loop_file, code);
    if (answer.loops.size() == 1) before.planned.passes = book::passes_of(answer.loops.front());
    find_again(book, code, lesson, before);
  } catch (const Error& error) {
    before.why_not = error.what();
  }
  return before;
}

std::string words_of(const Before& before, const book::Lesson& lesson, const std::string& code) {
  if (lesson.plan.wish.empty()) return "taken back; it wasn't planned here and counts no more";
  if (before.why_not.empty()) return "taken back; it is planned again, as it was";
  const bool no_streets = lesson.state == book::LessonState::not_driven;
  if (!lesson.plan.loop_file.empty())
    return "taken back; it is planned again, with the drive it had; " +
           std::string(no_streets ? "its streets don't count" : "its streets stay as logged") +
           " (" + before.why_not + ")";
  return "taken back; it is planned again, but without its drive (" + before.why_not + ")" +
         (no_streets ? ", and its streets don't count" : "") + ": 'loopwright lesson again " +
         code + " --lesson " + std::to_string(lesson.number) + " --start …' plans one";
}

}  // namespace

Exit lesson_unlog(const Arguments& words) {
  Options app{
      "Takes back what was logged of a lesson, or that it wasn't driven: it is planned again. One "
      "that wasn't planned here counts no more. To say it otherwise, log it once more.",
      "loopwright lesson unlog"};
  LessonTexts texts;
  app.add_option("CODE", texts.code, "the pupil's code")->required();
  add_book(app, texts.book);
  app.add_option("--lesson", texts.lesson,
                 "number of the lesson (default: the latest that is logged, or wasn't driven)");
  if (!parse(app, words)) return Exit::done;
  book::Book book = open_book(texts.book, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.code));
  const int number =
      number_meant(book::lessons_of(book, pupil.code), pupil.code, lesson_number(texts));
  const book::Lesson lesson = book::lesson_of(book, pupil.code, number);
  const Before before = before_the_log(book, pupil.code, lesson);
  book::unlog_lesson(book, {pupil.code, number, book::mark_of(lesson)}, before.planned);
  print_folded(std::cout, 0,
               pupil.code + ", lesson " + std::to_string(number) + ": " +
                   words_of(before, lesson, pupil.code));
  return Exit::done;
}

}  // namespace loopwright::command
