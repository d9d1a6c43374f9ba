#include "command/lesson_of_pupil.hpp"

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/hours_place.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/log_words.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {

void add_lesson(Options& app, LessonTexts& texts) {
  app.add_option("CODE", texts.code, "the pupil's code")->required();
  add_book(app, texts.book);
  app.add_option("--lesson", texts.lesson,
                 "number of the lesson (default: the next that is planned)");
}

std::optional<int> lesson_number(const LessonTexts& texts) {
  if (texts.lesson.empty()) return std::nullopt;
  return whole_number("--lesson", texts.lesson, {1, 9999});
}

const book::Lesson& lesson_meant(const std::vector<book::Lesson>& lessons, const std::string& code,
                                 std::optional<int> number) {
  const book::Lesson* meant = nullptr;
  for (const book::Lesson& lesson : lessons) {
    if (number && lesson.number == *number) return lesson;
    if (number || lesson.state != book::LessonState::planned) continue;
    if (meant == nullptr || lesson.plan.start.unix_s < meant->plan.start.unix_s) meant = &lesson;
  }
  if (meant != nullptr) return *meant;
  if (number)
    throw UsageError("--lesson: " + code + " has no lesson " + std::to_string(*number) +
                     "; 'loopwright lesson list " + code + "' shows them");
  throw UsageError(code + " has no lesson that is planned; plan one with 'loopwright lesson plan " +
                   code + "', or name one with --lesson");
}

std::string name_in_calendar(const std::string& code, const book::Plan& plan) {
  return code + (book::is_mock_plan(plan) ? ", mock test" : "");
}

std::string name_on_sheet(const std::string& code, const book::Plan& plan) {
  const std::string mark = book::sheet_mark(plan);
  return name_in_calendar(code, plan) + (mark.empty() ? "" : ", sheet " + mark);
}

std::string zone_of_lessons(const std::vector<book::Lesson>& lessons, const std::string& area) {
  if (!area.empty()) return store::open_area(area).roads().info().zone;
  for (auto lesson = lessons.rbegin(); lesson != lessons.rend(); ++lesson) {
    if (lesson->plan.area.empty()) continue;
    try {
      return store::open_area(lesson->plan.area).roads().info().zone;
    } catch (const InputError&) {
      // Moved, or of an older version: the one before may tell.
    }
  }
  return std::string(book_zone);
}

void need_begun(const std::string& which, const Instant& start) {
  if (start.unix_s <= moment(std::nullopt, book_zone).unix_s) return;
  throw UsageError(which + " begins " + spoken_moment(start) +
                   ", which is still to come by this computer's clock: nothing is logged; name "
                   "another with --lesson, say 'not driven' of one that won't be, or add --yes "
                   "when it was driven all the same");
}

Instant start_there(const std::optional<WrittenTime>& start, const std::string& area) {
  return moment(start, store::open_area(area).roads().info().zone);
}

int planned_then(const std::vector<book::Lesson>& lessons, const Instant& start) {
  for (const book::Lesson& lesson : lessons)
    if (lesson.state == book::LessonState::planned && lesson.plan.start.unix_s == start.unix_s)
      return lesson.number;
  return 0;
}

}  // namespace loopwright::command
