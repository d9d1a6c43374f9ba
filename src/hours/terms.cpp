// 1. A line is two dates and words of one's own; '#' begins a comment.
// 2. Parts are put in order; two that share a day can't both be meant.
// 3. A day in no part, but between the first and the last, is a holiday.
#include "loopwright/hours/terms.hpp"

#include <algorithm>
#include <string>

#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::hours {
namespace {

struct Line {
  TermPart part;
  int number = 0;
};

[[noreturn]] void refuse(std::string_view file_name, int line, std::string_view what) {
  throw InputError(std::string(file_name) + ", line " + std::to_string(line) + ": " +
                   std::string(what));
}

/// "2026-09-02 2026-10-23 autumn"; the words are passed over.
TermPart part_of(std::string_view text, std::string_view file_name, int line) {
  const std::size_t blank = text.find_first_of(" \t");
  const std::string_view rest =
      blank == std::string_view::npos ? std::string_view() : trim(text.substr(blank));
  const auto first = read_date(text.substr(0, blank));
  const auto last = read_date(rest.substr(0, rest.find_first_of(" \t")));
  if (!first || !last) {
    refuse(file_name, line,
           "no two dates; write the first and last school day: 2026-09-02 2026-10-23");
  }
  if (*last < *first) refuse(file_name, line, "it ends before it begins");
  return {*first, *last};
}

}  // namespace

Tri SchoolTerms::holiday(Date day) const {
  if (parts_.empty() || day < parts_.front().first || parts_.back().last < day) {
    return Tri::unknown;
  }
  const bool in_term = std::ranges::any_of(
      parts_, [day](const TermPart& part) { return part.first <= day && day <= part.last; });
  return in_term ? Tri::no : Tri::yes;
}

SchoolTerms read_terms(std::string_view text, std::string_view file_name) {
  std::vector<Line> lines;
  int number = 0;
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  while (!text.empty()) {
    ++number;
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    const std::string_view words = trim(line.substr(0, line.find('#')));
    if (!words.empty()) lines.push_back({part_of(words, file_name, number), number});
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  std::ranges::stable_sort(lines, {}, [](const Line& line) { return line.part.first; });
  std::vector<TermPart> parts;
  for (const Line& line : lines) {
    if (!parts.empty() && line.part.first <= parts.back().last) {
      refuse(file_name, line.number, "it shares days with another line");
    }
    parts.push_back(line.part);
  }
  return SchoolTerms(std::move(parts));
}

}  // namespace loopwright::hours
