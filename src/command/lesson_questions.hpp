// A lesson's log by questions, for who sits at a terminal.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/log_words.hpp"

namespace loopwright::command {

/// The passes that were planned, and the plan as it is kept; empty of a lesson that wasn't planned here. What the pupil's
/// other lessons leave open of their goals.
struct ToBeLogged {
  std::vector<book::LessonPass> planned;
  book::Plan plan;
  std::vector<std::string> open_goals;
};

/// Asks what came of the planned passes. An answer that can't be meant is told and asked for again; an empty one says
/// nothing. Throws InputError when the answers end before the questions do.
book::Said ask_log(std::istream& in, std::ostream& out, const ToBeLogged& lesson);

}  // namespace loopwright::command
