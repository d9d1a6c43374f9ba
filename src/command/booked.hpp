// What the book has of a day beside the lessons that are about to be planned, and what clashes with it.
//
//   if (tell_booked_clashes(std::cout, book, ground, {"WREN", 0, start, 60, "4 Lantern Row", ""})) …
//
// Rules: a lesson that will be planned anew, of that pupil and number, isn't its own clash. What didn't happen clashes
// with nothing. A lesson that lasts over midnight meets those of the next day.
#pragma once

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

#include "command/day_between.hpp"
#include "command/ground.hpp"
#include "command/next_plan.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/book/book.hpp"

namespace loopwright::command {

/// A lesson of the book as one that takes the instructor's time.
struct BookedVisit {
  std::string code;
  int number = 0;
  DayVisit visit;  ///< its code tells the lesson, too: "WREN's lesson 2"
};

/// Whose day it is: the instructor's who holds that pupil. The office sees all instructors' lessons, and they don't meet.
struct DayAsked {
  Date day;
  std::string code;
};
/// All of that day, by their starts, and what lies so near to its midnights that it may clash with them. Ends that the area doesn't
/// know are none.
std::vector<BookedVisit> booked_on(const book::Book& book, const Ground& ground,
                                   const DayAsked& asked);

/// A lesson that is about to be planned.
struct MeantLesson {
  std::string code;
  int number = 0;  ///< of the lesson it takes the place of; 0: none
  Instant start;
  int minutes = 60;
  std::string begin, end;  ///< as typed; an empty end is the begin
};

/// Tells what of the book it overlaps, and before or behind which there is too little time to drive; true when something
/// was told. Places that the area doesn't know are left to the search to refuse.
bool tell_booked_clashes(std::ostream& out, const book::Book& book, Ground& ground,
                         const MeantLesson& meant);

/// How a lesson of the book is moved out of the way.
inline constexpr std::string_view moves_a_lesson =
    "'loopwright lesson again CODE --lesson N --start …' moves a lesson of the book, 'loopwright "
    "lesson log CODE --lesson N \"not driven\"' takes it out";

/// The same of one lesson that is planned whether it clashes or not, with how another is moved out of its way.
void tell_clashes_of_plan(std::ostream& out, const book::Book& book, const AreaTexts& area,
                          const MeantLesson& meant);

/// What words ask for, as a lesson of the pupil's record; now when they say no start. Throws UsageError.
MeantLesson meant_by(const NextAsk& ask, const std::vector<book::Lesson>& lessons);

}  // namespace loopwright::command
