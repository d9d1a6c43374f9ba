// 1. Blanks part tokens and are dropped (the no-break space too).
// 2. Digits make numbers, of eight digits at most; letters words; "…" a comment; the rest signs of
//    one character, but "||" and the long dashes, which are read as '-'.
// 3. A quote that isn't closed is a sign, so that reading stops at it.
#include "hours/tokens.hpp"

#include <array>
#include <utility>

#include "loopwright/base/text.hpp"

namespace loopwright::hours {
namespace {

using Kind = Token::Kind;

constexpr int most_digits = 8;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

class Cutter {
 public:
  explicit Cutter(std::string_view text) : text_(text) {}

  std::vector<Token> all() {
    while (skip_blanks(), at_ < text_.size()) tokens_.push_back(next());
    tokens_.push_back({Kind::end, {}, 0, 0, text_.size(), text_.size()});
    return std::move(tokens_);
  }

 private:
  void skip_blanks() {
    while (at_ < text_.size()) {
      const std::string_view rest = text_.substr(at_);
      if (rest.front() == ' ' || rest.front() == '\t') {
        ++at_;
      } else if (rest.starts_with("\u00a0")) {
        at_ += 2;
      } else {
        return;
      }
    }
  }

  template <class Belongs>
  std::size_t end_of(Belongs belongs) const {
    std::size_t end = at_;
    while (end < text_.size() && belongs(text_[end])) ++end;
    return end;
  }

  Token taken(Kind kind, std::size_t end, std::string text) {
    Token token{kind, std::move(text), 0, 0, at_, end};
    at_ = end;
    return token;
  }

  Token number() {
    const std::size_t end = std::min(end_of(is_digit), at_ + most_digits);
    Token token = taken(Kind::number, end, std::string(text_.substr(at_, end - at_)));
    token.digits = static_cast<int>(token.text.size());
    token.number = read_int(token.text).value_or(0);
    return token;
  }

  Token next() {
    const std::string_view rest = text_.substr(at_);
    if (is_digit(rest.front())) return number();
    if (is_letter(rest.front())) {
      const std::size_t end = end_of(is_letter);
      return taken(Kind::word, end, lower(text_.substr(at_, end - at_)));
    }
    const std::size_t closing = rest.front() == '"' ? rest.find('"', 1) : rest.npos;
    if (closing != rest.npos) {
      return taken(Kind::comment, at_ + closing + 1, std::string(rest.substr(1, closing - 1)));
    }
    constexpr std::array<std::string_view, 3> dashes{"\u2013", "\u2014", "\u2010"};
    for (const std::string_view dash : dashes) {
      if (rest.starts_with(dash)) return taken(Kind::sign, at_ + dash.size(), "-");
    }
    const std::size_t length = rest.starts_with("||") ? 2 : 1;
    return taken(Kind::sign, at_ + length, std::string(rest.substr(0, length)));
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::vector<Token> tokens_;
};

}  // namespace

std::vector<Token> tokens_of(std::string_view text) {
  return Cutter(text).all();
}

}  // namespace loopwright::hours
