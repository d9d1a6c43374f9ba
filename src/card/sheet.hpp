// A plain sheet of text, at most so many columns wide.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::card {

inline constexpr std::size_t sheet_columns = 80;

/// Columns a text takes: one for each code point.
std::size_t columns(std::string_view text);

/// The text cut at blanks into lines of at most so many columns; a longer word is cut too.
std::vector<std::string> wrapped(std::string_view text, std::size_t width);

/// "a; b; c"
std::string joined(const std::vector<std::string>& parts, std::string_view between);

class Sheet {
 public:
  void line(std::string text);
  void blank() { line({}); }
  void rule(char ink) { line(std::string(sheet_columns, ink)); }
  /// One text at the left edge and one at the right; the left is wrapped to make room.
  void spread(std::string_view left, std::string_view right);
  /// Wrapped; lines after the first are indented a little more.
  void paragraph(std::size_t indent, std::string_view text);
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

}  // namespace loopwright::card
