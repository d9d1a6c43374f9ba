#include "manual/roff.hpp"

namespace loopwright::manual {
namespace {

std::string in_font(char font, std::string_view text) {
  return std::string("\\f") + font + roff(text) + "\\fR";
}

/// Appends what begins at `at` when it is marked; true when it was, and `at` lies behind it then.
bool take_marked(std::string_view text, std::size_t& at, std::string& to) {
  const auto rest = text.substr(at);
  for (const std::string_view mark : {"**", "`"}) {
    const auto end = rest.find(mark, mark.size());
    if (!rest.starts_with(mark) || end == std::string_view::npos) continue;
    to += bold(rest.substr(mark.size(), end - mark.size()));
    at += end + mark.size();
    return true;
  }
  const auto middle = rest.find("]("), end = rest.find(')');
  if (!rest.starts_with('[') || middle == std::string_view::npos || end == std::string_view::npos ||
      end < middle)
    return false;
  to += roff(rest.substr(1, middle - 1)) + " (" + roff(rest.substr(middle + 2, end - middle - 2)) +
        ")";
  at += end + 1;
  return true;
}

}  // namespace

std::string roff(std::string_view text) {
  std::string out;
  for (std::size_t k = 0; k < text.size(); ++k) {
    const char c = text[k];
    const bool begins = k == 0 || text[k - 1] == '\n';
    if (begins && (c == '.' || c == '\'')) out += "\\&";
    if (c == '\\') {
      out += "\\e";
    } else if (c == '-') {
      out += "\\-";
    } else {
      out += c;
    }
  }
  return out;
}

std::string roff_of_markdown(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();)
    if (!take_marked(text, at, out)) {
      // A character at a time: what begins a line is escaped as such, all others aren't.
      out += at == 0 ? roff(text.substr(0, 1)) : roff(" " + std::string(1, text[at])).substr(1);
      ++at;
    }
  return out;
}

std::string bold(std::string_view text) {
  return in_font('B', text);
}

std::string italic(std::string_view text) {
  return in_font('I', text);
}

}  // namespace loopwright::manual
