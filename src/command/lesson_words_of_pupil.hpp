// What the book adds to the words of a wish: the pupil's home, level and what is kept off, and the minutes that a lesson
// of its length has for driving.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "command/wish_words.hpp"
#include "loopwright/book/book.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/pace_learned.hpp"
#include "loopwright/book/pupil.hpp"

namespace loopwright::command {

/// How long a lesson is, and what of it is what; in words, "lesson of 60 min: 10 to talk, 45 to drive, back 5 early".
struct LessonLength {
  int minutes = 60;
  std::string sum;  ///< empty when --minutes, --part or --through said it another way
};

/// A pupil's lessons, and how long they took.
struct PupilRecord {
  std::vector<book::Lesson> lessons;
  book::PaceLearned pace;
};
PupilRecord record_of(const book::Book& book, const std::string& code);

/// Fewer lessons than this don't change how much is planned.
inline constexpr int least_lessons_for_pace = 3;

/// What --home says, else the pupil's home. Throws UsageError when there is neither.
std::string home_said(const std::string& said, const book::Pupil& pupil);

/// By how much the pupil's driving is longer than usual, at the hour that is said; 1 while too little is known.
double pace_at_start(const WishWords& words, const book::PaceLearned& pace);

/// The minutes of a lesson of that --length, as typed; empty: an hour. Throws UsageError.
int length_said(const std::string& length);

/// Fills in what isn't said. length: as typed; empty: an hour, or as long as --minutes needs. Times are by the
/// pupil's own pace, once enough is known of it. Throws UsageError.
LessonLength fill_from_book(WishWords& words, const book::Pupil& pupil, const PupilRecord& record,
                            const std::string& length);

}  // namespace loopwright::command
