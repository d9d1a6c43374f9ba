// What is said when a lesson is logged.
#pragma once

#include <string>

#include "loopwright/base/instant.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/scheme.hpp"

namespace loopwright::command {

/// On standard output. start: the lesson's, so that the log of another one than was meant is noticed.
void tell_logged(const std::string& code, int number, const Instant& start, const book::Log& log,
                 const book::Scheme& scheme);

}  // namespace loopwright::command
