// The lessons of a book's pupils: planned, moved, logged, listed.
//
// Rules: throws InputError, also when there is no such pupil or lesson. What was logged is kept when a lesson is logged
// once more: the later log takes its place.
#pragma once

#include <string_view>
#include <vector>

#include "loopwright/book/book.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/streets.hpp"

namespace loopwright::book {

/// Writes a plan and the quiet streets it uses. Returns the lesson's number.
int plan_lesson(Book& book, std::string_view code, const Plan& plan,
                const std::vector<StreetDriven>& streets);
/// Puts another plan in the place of one that isn't driven. Throws InputError when it is.
void replan_lesson(Book& book, std::string_view code, int number, const Plan& plan,
                   const std::vector<StreetDriven>& streets);
/// Writes what came of it; the lesson is driven then, and its loop file is kept until the next is logged.
void log_lesson(Book& book, std::string_view code, int number, const Log& log);
/// A lesson that wasn't planned here. Returns its number.
int add_driven_lesson(Book& book, std::string_view code, const Plan& plan, const Log& log);
/// Takes back what was logged, or that it wasn't driven: it is planned again, and what came of it, a recording and what was
/// seen on its day are gone; one that wasn't planned here counts as not driven. The streets stay as the log left them: who
/// has the area plans the kept loop file once more (replan_lesson).
void unlog_lesson(Book& book, std::string_view code, int number);
/// A planned lesson that didn't happen: its streets count no more.
void drop_lesson(Book& book, std::string_view code, int number);

/// Of one pupil, by number, without the texts of their loop files.
std::vector<Lesson> lessons_of(const Book& book, std::string_view code);
/// One of them, all of it.
Lesson lesson_of(const Book& book, std::string_view code, int number);

}  // namespace loopwright::book
