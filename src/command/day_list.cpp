#include "command/day_list.hpp"

#include <algorithm>
#include <optional>

#include "command/arguments.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/book/pupil.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {
namespace {

constexpr Between lengths{20, 600};

std::vector<std::string_view> words_of(std::string_view line) {
  std::vector<std::string_view> words;
  for (std::string_view rest = trim(line); !rest.empty(); rest = trim(rest)) {
    const std::size_t end = std::min(rest.find_first_of(" \t,"), rest.size());
    if (end > 0) words.push_back(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return words;
}

/// "roundabouts" as "roundabout=max".
std::string want_of(std::string_view word) {
  const bool plural = word.size() > 1 && word.back() == 's' && !road::parse_kind(word);
  if (plural && road::parse_kind(word.substr(0, word.size() - 1)))
    return std::string(word.substr(0, word.size() - 1)) + "=max";
  return wish::write_want(wish::read_want(word));
}

DayLine read_line(std::string_view line, Date day) {
  const auto words = words_of(line);
  if (words.size() < 3)
    throw UsageError(
        "takes a start, minutes, a pupil and what to practise, such as '09:00 90 WREN "
        "roundabouts', not " +
        as_given(line));
  const auto start = read_time(road::day_text(day) + "T" + std::string(words[0]));
  if (!start || words[0].size() != 5)
    throw UsageError("a start is such as 09:00, not " + as_given(words[0]));
  if (!book::is_code(words[2])) throw UsageError("a pupil is a code, not " + as_given(words[2]));
  DayLine one{start->civil,
              whole_number("the minutes of a lesson", words[1], lengths),
              std::string(words[2]),
              {},
              {}};
  for (std::size_t k = 3; k < words.size(); ++k)
    if (words[k] != "next") one.wants.push_back(want_of(words[k]));
  return one;
}

}  // namespace

std::vector<DayLine> read_day(std::string_view text, const std::string& file, Date day) {
  std::vector<DayLine> lines;
  int number = 0;
  for (const std::string_view whole : split(text, '\n')) {
    ++number;
    const std::string_view line = trim(whole.substr(0, whole.find('#')));
    if (line.empty()) continue;
    const std::string from = file + ", line " + std::to_string(number);
    try {
      lines.push_back(read_line(line, day));
    } catch (const UsageError& error) {
      throw InputError(from + ": " + error.what());
    }
    lines.back().from = from;
  }
  if (lines.empty())
    throw InputError(file +
                     ": has no lesson; write a line each, such as '09:00 90 WREN roundabouts'");
  std::stable_sort(lines.begin(), lines.end(),
                   [](const DayLine& a, const DayLine& b) { return a.start < b.start; });
  return lines;
}

}  // namespace loopwright::command
