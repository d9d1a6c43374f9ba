// Goes along the tokens of a text of hours, and remembers the first place where reading had to stop.
//
// Rules: private to hours. take…() go on past what they take; is…() only look.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "hours/tokens.hpp"

namespace loopwright::hours {

/// What can't be read, and what should have stood there.
struct Trouble {
  std::size_t at = 0;
  std::string_view wanted;
};

class TokenReader {
 public:
  explicit TokenReader(std::vector<Token> tokens) : tokens_(std::move(tokens)) {}

  [[nodiscard]] const Token& peek(std::size_t ahead = 0) const {
    const std::size_t row = at_ + ahead;
    return row < tokens_.size() ? tokens_[row] : tokens_.back();
  }
  [[nodiscard]] bool is(std::string_view what, std::size_t ahead = 0) const {
    return peek(ahead).is(what);
  }
  [[nodiscard]] bool is_number(std::size_t ahead = 0) const {
    return peek(ahead).kind == Token::Kind::number;
  }
  /// A number that begins a time of day ("07:00", "7.30") and is no day or week before a ':' for the
  /// eye ("Dec 25: off", "Dec 25: 08:00-10:00").
  [[nodiscard]] bool is_clock(std::size_t ahead = 0) const {
    const bool parted = is(":", ahead + 1) || is(".", ahead + 1);
    if (!is_number(ahead) || !parted || !is_number(ahead + 2)) return false;
    if (peek(ahead + 2).digits != 2 || peek(ahead + 1).to != peek(ahead + 2).from) return false;
    return !is(":", ahead + 3) && !is(".", ahead + 3);
  }
  [[nodiscard]] bool done() const { return peek().kind == Token::Kind::end; }
  /// Index of the next token, for going back with return_to().
  [[nodiscard]] std::size_t at() const { return at_; }
  void return_to(std::size_t at) { at_ = at; }
  void skip(std::size_t count = 1) { at_ = std::min(at_ + count, tokens_.size() - 1); }
  bool take(std::string_view what) {
    if (!is(what)) return false;
    skip();
    return true;
  }
  std::optional<int> take_number() {
    if (!is_number()) return std::nullopt;
    const int number = peek().number;
    skip();
    return number;
  }
  /// Bytes of the text up to the last token taken.
  [[nodiscard]] std::size_t taken_to() const { return at_ == 0 ? 0 : tokens_[at_ - 1].to; }

  /// Reading can't go on here. Only the first call counts; false, for returning it.
  bool stop(std::string_view wanted) {
    if (!trouble_) trouble_ = Trouble{peek().from, wanted};
    return false;
  }
  [[nodiscard]] const std::optional<Trouble>& trouble() const { return trouble_; }

 private:
  std::vector<Token> tokens_;
  std::size_t at_ = 0;
  std::optional<Trouble> trouble_;
};

}  // namespace loopwright::hours
