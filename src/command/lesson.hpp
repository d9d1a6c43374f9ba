// What one does with the lessons of a pupil; see lesson.cpp.
#pragma once

#include "loopwright/command/command.hpp"

namespace loopwright::command {

Exit lesson_plan(const Arguments& words);
Exit lesson_again(const Arguments& words);
Exit lesson_print(const Arguments& words);
Exit lesson_log(const Arguments& words);
Exit lesson_unlog(const Arguments& words);
Exit lesson_trace(const Arguments& words);
Exit lesson_next(const Arguments& words);
Exit lesson_like_it(const Arguments& words);
Exit lesson_at_home(const Arguments& words);
Exit lesson_list(const Arguments& words);

}  // namespace loopwright::command
