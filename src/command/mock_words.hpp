// What the marks of a mock test came to, in words.
#pragma once

#include <string>

#include "loopwright/book/lesson.hpp"

namespace loopwright::command {

/// "driving faults 4, serious 0, dangerous 0; within the rule; marked more than once …: junctions, observation 3". Rules:
/// the log has a mock test.
std::string mock_words(const book::Log& log);

}  // namespace loopwright::command
