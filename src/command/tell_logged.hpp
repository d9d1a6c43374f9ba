// What is said when a lesson is logged.
#pragma once

#include <string>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/scheme.hpp"

namespace loopwright::command {

/// On standard output.
void tell_logged(const std::string& code, int number, const book::Log& log,
                 const book::Scheme& scheme);

}  // namespace loopwright::command
