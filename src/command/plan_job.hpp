// A lesson that is planned for a pupil: looked for, proved, and kept in the book. Shared by `lesson plan`, `lesson again`
// and `day`.
//
//   FoundPlan found = find_plan(book, job, std::cout);   if (!found.answer.loops.empty()) number = keep_plan(book, job, found);
#pragma once

#include <cstdint>
#include <filesystem>
#include <iosfwd>
#include <memory>
#include <string>

#include "command/ground.hpp"
#include "command/lesson_words_of_pupil.hpp"
#include "command/loop_search.hpp"
#include "loopwright/book/book.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/card/ground.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// What is planned, and for whom.
struct PlanJob {
  std::string code;
  AreaTexts area;
  LessonLength length;
  LoopAsk ask;
  std::filesystem::path output = {};  ///< a loop file as well; empty: none
  int number = 0;                     ///< the lesson that is planned anew; 0: a new one
  std::string mark = {};  ///< what that lesson was when its search began (record_mark.hpp)
  bool settled = false;   ///< its places were looked up: told once, and once in the wish
  bool mock = false;      ///< planned as a mock test, and kept as one
};

struct FoundPlan {
  std::unique_ptr<Ground> ground;  ///< the roads its loops lie on
  wish::Answer answer;
  std::string text;  ///< the loop file
  std::int64_t claims = 0;
};

/// Searches with the book's ledger of streets, and proves what was found; `out` is told of places. Throws as
/// loop_search.hpp does.
FoundPlan find_plan(const book::Book& book, PlanJob& job, std::ostream& out);

/// The drive that a lesson's loop file keeps, at the start of the job; or why it doesn't do any more.
struct KeptPlan {
  std::optional<FoundPlan> found;  ///< proved
  std::string why_not;
};
KeptPlan keep_drive(const book::Book& book, PlanJob& job, const std::string& loop_file);

/// What its first loop asks to look at on the ground.
std::vector<card::GroundItem> ground_items_of(const FoundPlan& found);
/// Tells of its first loop what was seen once and is to be looked at again (ground_marks.hpp).
void tell_look_again(std::ostream& out, const book::Book& book, const FoundPlan& found);

/// The first loop as the book keeps it. Rules: there is one.
book::PlanWithStreets plan_of(const book::Book& book, const PlanJob& job, const FoundPlan& found);
/// Writes the first loop into the book. Rules: there is one. Returns the lesson's number. Throws InputError when somebody else
/// planned, moved or logged the lesson since its search began.
int keep_plan(book::Book& book, const PlanJob& job, const FoundPlan& found);

}  // namespace loopwright::command
