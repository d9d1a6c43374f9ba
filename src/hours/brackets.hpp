// Brackets and quotes in conditions.
//
// Rules: private to hours.
#pragma once

#include <algorithm>
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

/// How many brackets round a text hold all of it: "((a)(b))" has one, "(a) AND (b)" none.
///
/// In one pass: with every other character the brackets open there bound their number from above, and so
/// do those that open the text and close it.
inline int brackets_round(std::string_view text) {
  int opening = 0, open = 0, least = 0, closing = 0;
  bool quoted = false, begun = false;
  for (const char c : text) {
    if (c == ' ' || c == '\t') continue;
    if (!quoted && c == ')') {
      begun = true;
      --open, ++closing;
      continue;
    }
    closing = 0;
    if (!begun && c == '(') {
      least = ++opening, ++open;
      continue;
    }
    begun = true;
    least = std::min(least, open);
    if (c == '"') quoted = !quoted;
    if (!quoted && c == '(') ++open;
  }
  return quoted || open != 0 ? 0 : std::max(std::min(least, closing), 0);
}

/// "(a; b)" without its brackets; "(a) AND (b)" stays, and so does "(sunset-01:00)-23:00".
inline std::string_view without_brackets(std::string_view text) {
  for (int left = brackets_round(text); left > 0; --left) {
    text = trim(text.substr(1, text.size() - 2));
  }
  return text;
}

}  // namespace loopwright::hours
