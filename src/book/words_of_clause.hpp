// One clause of a log, word by word, and its refusals.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/book/lesson.hpp"

namespace loopwright::book {

class Clause {
 public:
  /// text: without the parting ';'.
  explicit Clause(std::string_view text);

  /// The word at hand; empty at the end.
  [[nodiscard]] std::string_view word() const {
    return at_ < words_.size() ? words_[at_] : std::string_view();
  }
  void take() { ++at_; }
  /// Takes the word when it is this one.
  bool took(std::string_view word);
  [[nodiscard]] bool ends() const { return at_ >= words_.size(); }
  /// What stands behind the colon; empty when there is none.
  [[nodiscard]] std::string_view text() const { return text_; }
  [[nodiscard]] bool has_text() const { return has_text_; }

  /// A whole number at hand, taken. Throws UsageError when it isn't one between the two.
  int number(std::string_view what, int low, int high);
  /// A level at hand, taken; none when a word that isn't a number is at hand.
  std::optional<int> level();
  /// "x3" at hand, taken; none else.
  std::optional<int> count();
  /// A kind and maybe a movement, taken; none when no kind is at hand.
  std::optional<Practice> practice();
  /// "fault" was taken: a heading, maybe a grade and a count. Throws UsageError.
  LessonFault fault();

  void need_end();
  [[noreturn]] void refuse(const std::string& why) const;

 private:
  std::string_view whole_, text_;
  bool has_text_ = false;
  std::vector<std::string_view> words_;
  std::size_t at_ = 0;
};

}  // namespace loopwright::book
