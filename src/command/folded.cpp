#include "command/folded.hpp"

#include <algorithm>
#include <ostream>
#include <string>

#include "loopwright/base/printable.hpp"

namespace loopwright::command {
namespace {

constexpr std::size_t columns = 80;

std::size_t width_of(std::string_view text) {
  return static_cast<std::size_t>(std::ranges::count_if(
      text, [](char c) { return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U; }));
}

}  // namespace

std::size_t bytes_of(std::string_view text, std::size_t characters) {
  const auto begins = [](char byte) { return (static_cast<unsigned char>(byte) & 0xc0U) != 0x80U; };
  for (std::size_t k = 0; k < text.size(); ++k)
    if (begins(text[k]) && characters-- == 0) return k;
  return text.size();
}

void print_folded(std::ostream& out, std::size_t indent, std::string_view unsafe) {
  const std::string safe = printable(unsafe);
  std::string_view text = safe;
  std::string line(indent, ' ');
  bool bare = true;  // nothing but the indent stands in it
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (!bare && width_of(line) + 1 + width_of(word) > columns) {
      out << line << '\n';
      line.assign(indent + 2, ' ');
      bare = true;
    }
    if (!bare) line += ' ';
    line += word;
    bare = false;
  }
  out << line << '\n';
}

}  // namespace loopwright::command
