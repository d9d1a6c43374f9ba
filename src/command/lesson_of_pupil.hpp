// The lesson of a pupil that a command speaks of.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "command/options.hpp"
#include "loopwright/book/lesson.hpp"

namespace loopwright::command {

/// The word CODE and the options --book and --lesson, as typed.
struct LessonTexts {
  std::string code, book, lesson;
};
void add_lesson(Options& app, LessonTexts& texts);

/// The number that --lesson says; none when it isn't given. Throws UsageError.
std::optional<int> lesson_number(const LessonTexts& texts);

/// The one of that number, else the earliest that is planned. Throws UsageError when there is none.
const book::Lesson& lesson_meant(const std::vector<book::Lesson>& lessons, const std::string& code,
                                 std::optional<int> number);

/// What the calendar calls a plan: "WREN, mock test". Without the sheet's mark, which another plan has.
std::string name_in_calendar(const std::string& code, const book::Plan& plan);
/// What the sheets of a plan are headed with: "WREN, mock test, sheet KD".
std::string name_on_sheet(const std::string& code, const book::Plan& plan);

/// The clock by which a pupil's lessons are given: of the area that is named, else of the one the latest was planned in
/// when that is still there, else Great Britain's. Throws InputError when the named one can't be opened.
std::string zone_of_lessons(const std::vector<book::Lesson>& lessons, const std::string& area);

/// Throws UsageError for a lesson that is still to come by this computer's clock, and says what to do. which: "WREN, lesson
/// 2".
void need_begun(const std::string& which, const Instant& start);
/// The help of --yes, which says that it is meant all the same.
inline constexpr const char* still_to_come_help =
    "log it though it is still to come by this computer's clock";

/// When a start is by the clock of an area file, whatever offset it was said with; none said: now.
Instant start_there(const std::optional<WrittenTime>& start, const std::string& area);
/// The number of the lesson that is planned for that start already; 0: none.
int planned_then(const std::vector<book::Lesson>& lessons, const Instant& start);

}  // namespace loopwright::command
