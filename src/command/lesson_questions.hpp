// A lesson's log by questions, for who sits at a terminal.
#pragma once

#include <iosfwd>
#include <vector>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/log_words.hpp"

namespace loopwright::command {

/// What was planned, and what its sheet asks to look at on the ground.
struct ToBeLogged {
  std::vector<book::LessonPass> planned;
  std::vector<book::LetteredFact> to_check;
};

/// Asks what came of the planned passes. An answer that can't be meant is told and asked for again; an empty one says
/// nothing. Throws InputError when the answers end before the questions do.
book::Said ask_log(std::istream& in, std::ostream& out, const ToBeLogged& lesson);

}  // namespace loopwright::command
