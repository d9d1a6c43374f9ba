// Method: lines are filled word by word. Columns are counted in code points, which is right for
// the scripts street names here are written in; wide characters would stand out at the right.
#include "card/sheet.hpp"

#include <algorithm>

namespace loopwright::card {

std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  }));
}

namespace {

/// Bytes that the first so many columns of a text take, whole code points.
std::size_t bytes_of(std::string_view text, std::size_t width) {
  std::size_t bytes = 0, taken = 0;
  for (; bytes < text.size(); ++bytes) {
    const bool begins = (static_cast<unsigned char>(text[bytes]) & 0xC0) != 0x80;
    if (begins && taken++ == width) break;
  }
  return bytes;
}

}  // namespace

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  std::vector<std::string> lines{{}};
  while (!text.empty()) {
    const std::size_t end =
        std::min({text.find(' '), text.size(), bytes_of(text, std::max<std::size_t>(width, 1))});
    const std::string_view word = text.substr(0, end);
    const bool blank = end < text.size() && text[end] == ' ';
    text.remove_prefix(end + (blank ? 1 : 0));
    if (!lines.back().empty() && columns(lines.back()) + 1 + columns(word) > width)
      lines.emplace_back();
    if (!lines.back().empty()) lines.back() += ' ';
    lines.back() += word;
  }
  return lines;
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  std::string text;
  for (const std::string& part : parts) text.append(text.empty() ? "" : between).append(part);
  return text;
}

void Sheet::line(std::string text) {
  text.erase(text.find_last_not_of(' ') + 1);
  text_.append(text).push_back('\n');
}

void Sheet::spread(std::string_view left, std::string_view right) {
  constexpr std::size_t gap = 2;
  const std::size_t room = sheet_columns - columns(right) - gap;
  std::string_view beside = right;
  for (const std::string& part : wrapped(left, room)) {
    const std::size_t pad = sheet_columns - columns(part) - columns(beside);
    line(part + std::string(pad, ' ') + std::string(beside));
    beside = {};
  }
}

void Sheet::paragraph(std::size_t indent, std::string_view text) {
  constexpr std::size_t hang = 2;
  std::size_t margin = indent;
  for (const std::string& part : wrapped(text, sheet_columns - indent - hang)) {
    line(std::string(margin, ' ') + part);
    margin = indent + hang;
  }
}

}  // namespace loopwright::card
