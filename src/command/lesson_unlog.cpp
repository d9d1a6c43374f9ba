// Method: the book takes the log back in one piece; then the drive that it still keeps is laid over the same start once more,
// so that passes, streets and letters are those of the plan again.
#include <iostream>

#include "command/book_option.hpp"
#include "command/folded.hpp"
#include "command/lesson.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/plan_job.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/pupils.hpp"

namespace loopwright::command {
namespace {

/// The one of that number, else the latest that is logged. Throws UsageError when there is none.
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
    if (lesson.state == book::LessonState::driven &&
        (latest == nullptr || lesson.plan.start.unix_s >= latest->plan.start.unix_s))
      latest = &lesson;
  if (latest != nullptr) return latest->number;
  throw UsageError(code + " has no lesson that is logged");
}

/// Why the kept drive can't be the plan again; empty: it is.
std::string why_not_replanned(book::Book& book, const std::string& code, int number) {
  const book::Lesson lesson = book::lesson_of(book, code, number);
  if (lesson.plan.loop_file.empty())
    return "a later lesson was logged since, and its drive is gone";
  try {
    WishWords words;
    words.take_text(lesson.plan.wish, "the wish of lesson " + std::to_string(number));
    words.fill("start", write_time(lesson.plan.start), "");
    PlanJob job{code,
                {lesson.plan.area, lesson.plan.notes, lesson.plan.terms},
                {lesson.plan.length_minutes, ""},
                ask_of(std::move(words)),
                {},
                number};
    job.mock = book::is_mock_plan(lesson.plan);
    KeptPlan kept = keep_drive(book, job, lesson.plan.loop_file);
    if (!kept.found) return kept.why_not;
    kept.found->text =
        lesson.plan.loop_file;  // it says how good the drive is, which keeping it doesn't
    keep_plan(book, job, *kept.found);
    return "";
  } catch (const Error& error) {
    return error.what();
  }
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
                 "number of the lesson (default: the latest that is logged)");
  if (!parse(app, words)) return Exit::done;
  book::Book book = open_book(texts.book, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.code));
  const int number =
      number_meant(book::lessons_of(book, pupil.code), pupil.code, lesson_number(texts));
  book::unlog_lesson(book, pupil.code, number);
  const std::string which = pupil.code + ", lesson " + std::to_string(number);
  const bool was_planned =
      book::lesson_of(book, pupil.code, number).state == book::LessonState::planned;
  if (!was_planned) {
    print_folded(std::cout, 0, which + ": taken back; it wasn't planned here and counts no more");
    return Exit::done;
  }
  const std::string why_not = why_not_replanned(book, pupil.code, number);
  print_folded(
      std::cout, 0,
      which + ": taken back; it is planned again" +
          (why_not.empty()
               ? ", as it was"
               : ", but without its drive (" + why_not + "): 'loopwright lesson again " +
                     pupil.code + " --lesson " + std::to_string(number) + " --start …' plans one"));
  return Exit::done;
}

}  // namespace loopwright::command
