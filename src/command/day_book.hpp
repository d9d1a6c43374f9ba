// The lessons that the book has of a day, read back with their drives: for its sheet, and to print them all.
//
//   const auto lessons = lessons_on(book, "county.area", day);   print_day(book, lessons, "day.pdf");
#pragma once

#include <filesystem>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "command/booked.hpp"
#include "command/plan_job.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/pupil.hpp"
#include "loopwright/wish/day_sheet.hpp"

namespace loopwright::command {

/// One of them.
struct DayLesson {
  book::Pupil pupil;
  book::Lesson lesson;             ///< without its loop file's text
  std::optional<FoundPlan> found;  ///< its drive; none: it is driven, or can't be read
  std::string trouble;             ///< why it can't be read
};

/// Planned and driven ones, by their starts; each as it was planned, by its own notes and terms, on this area. asked: without a code
/// of whoever is seen. Throws UsageError when that is several instructors' day.
std::vector<DayLesson> lessons_on(const book::Book& book, const std::string& area,
                                  const DayAsked& asked);

/// Their sheet. area: with the notes by which the instructor drives from one to the next.
wish::DaySheet day_sheet(const book::Book& book, const AreaTexts& area, Date day,
                         const std::vector<DayLesson>& lessons);
void print_day_sheet(std::ostream& out, const wish::DaySheet& sheet);

/// Writes those that have a drive as one PDF, which belongs to every pupil in it.
void print_day(book::Book& book, const std::vector<DayLesson>& lessons,
               const std::filesystem::path& output);

}  // namespace loopwright::command
