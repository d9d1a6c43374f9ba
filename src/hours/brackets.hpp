// Brackets and quotes in conditions.
//
// Rules: private to hours.
#pragma once

#include <string_view>

#include "loopwright/base/text.hpp"

namespace loopwright::hours {

/// Positions of a text by how deep in brackets and quotes they lie.
class Depth {
 public:
  /// Goes past one more character; true when it lies outside all brackets and quotes.
  bool outside(char c) {
    if (c == '"') quoted_ = !quoted_;
    if (!quoted_ && c == '(') ++brackets_;
    if (!quoted_ && c == ')' && brackets_ > 0) --brackets_;
    return !quoted_ && brackets_ == 0;
  }

 private:
  int brackets_ = 0;
  bool quoted_ = false;
};

/// "(a; b)" without its brackets; "(a) AND (b)" stays, and so does "(sunset-01:00)-23:00".
inline std::string_view without_brackets(std::string_view text) {
  while (!text.empty() && text.front() == '(') {
    Depth depth;
    std::size_t closing = 0;
    while (closing < text.size() && !depth.outside(text[closing])) ++closing;
    if (closing + 1 != text.size()) return text;
    text = trim(text.substr(1, text.size() - 2));
  }
  return text;
}

}  // namespace loopwright::hours
