// The lessons of a book's pupils: planned, moved, logged, listed.
//
// Rules: throws InputError, also when there is no such pupil or lesson. What was logged is kept when a lesson is logged
// once more: the later log takes its place.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/book/book.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/streets.hpp"

namespace loopwright::book {

/// A lesson that is about to be changed, as the caller read it.
struct LessonRead {
  std::string_view code;
  int number = 0;
  /// Of what was read (record_mark.hpp): when the lesson isn't so any more, since somebody else logged, moved or planned it at
  /// that moment, theirs stays and InputError is thrown. Empty: whatever it is.
  std::string mark = {};
};

/// A plan, and the quiet streets it uses.
struct PlanWithStreets {
  Plan plan;
  std::vector<StreetDriven> streets;
};

/// Writes a plan and the quiet streets it uses. Returns the lesson's number. Throws InputError when one is planned for that
/// start already.
int plan_lesson(Book& book, std::string_view code, const Plan& plan,
                const std::vector<StreetDriven>& streets);
/// Puts another plan in the place of one that isn't driven. Throws InputError when it is.
void replan_lesson(Book& book, const LessonRead& of, const PlanWithStreets& to);
/// Writes what came of it; the lesson is driven then, and its loop file is kept until the next is logged.
void log_lesson(Book& book, const LessonRead& of, const Log& log);
/// A lesson that wasn't planned here. Returns its number.
int add_driven_lesson(Book& book, std::string_view code, const Plan& plan, const Log& log);
/// A planned lesson that didn't happen: its streets count no more.
void drop_lesson(Book& book, const LessonRead& of);

/// What a lesson was before it was logged, as far as the caller knows it.
struct AsPlanned {
  std::optional<std::vector<LessonPass>> passes = {};  ///< by its loop file; none: it isn't there
  std::optional<PlanWithStreets> again = {};           ///< all of it; none: the area isn't at hand
};
/// Takes back what was logged, or that it wasn't driven: it is planned again, and what came of it, a recording and what
/// its log saw on the ground are gone; one that wasn't planned here counts as not driven. Without `again` its streets and
/// minutes by sort of road stay as the log left them.
void unlog_lesson(Book& book, const LessonRead& of, const AsPlanned& planned);

/// Of one pupil, by number, without the texts of their loop files.
std::vector<Lesson> lessons_of(const Book& book, std::string_view code);
/// One of them, all of it.
Lesson lesson_of(const Book& book, std::string_view code, int number);

}  // namespace loopwright::book
