// How a verb is asked to describe itself: it is run with one word that no command line can hold, and throws what it
// says of itself where it would have read its words.
#pragma once

#include <string>

#include "loopwright/command/command.hpp"
#include "loopwright/command/description.hpp"

namespace loopwright::command {

/// Thrown by a verb that was asked: its options, or the deeds it has. `name` and `brief` are left to who asks.
struct Described {
  Description description;
  /// Of a deed in `description.deeds` at the same place, how it is run.
  std::vector<Exit (*)(const Arguments&)> deeds;
};

/// The word that asks. Its NUL can't come from a command line.
inline std::string word_that_asks() {
  return std::string("describe") + '\0';
}

inline bool is_asked(const Arguments& words) {
  return words.size() == 1 && words[0] == word_that_asks();
}

}  // namespace loopwright::command
