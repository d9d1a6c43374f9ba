// Cuts a text of hours into words, numbers, quoted comments and signs.
//
// Rules: private to hours. Words are lower case, so "MO" and "Mo" are one; long dashes are dashes.
// Ends with a token of kind `end`.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::hours {

struct Token {
  enum class Kind { number, word, comment, sign, end };
  Kind kind = Kind::end;
  std::string text;  ///< a sign: one character, or "||"; a comment without its quotes
  int number = 0;
  int digits = 0;
  std::size_t from = 0, to = 0;  ///< bytes of the whole text

  [[nodiscard]] bool is(std::string_view what) const {
    return (kind == Kind::sign || kind == Kind::word) && text == what;
  }
};

std::vector<Token> tokens_of(std::string_view text);

}  // namespace loopwright::hours
