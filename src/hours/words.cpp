// 1. Days with the same spans go together, in the order of their first day.
// 2. Their names: runs of three and more with "to" (a run may go over Sunday), others listed.
// 3. Their spans, the last joined by "and".
#include "hours/week.hpp"
#include "loopwright/hours/hours.hpp"

#include <algorithm>
#include <cstdio>

namespace loopwright::hours {
namespace {

constexpr std::array<std::string_view, 7> day_names = {
    "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"};

/// "a", "a and b", "a, b and c"
std::string listed(const std::vector<std::string>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) text += i + 1 == parts.size() ? " and " : ", ";
    text += parts[i];
  }
  return text;
}

std::string clock(int minute) {
  // An end at midnight is 24:00; after it the clock begins again.
  const int of_day = minute <= day_minutes ? minute : minute - day_minutes;
  char text[32];
  std::snprintf(text, sizeof text, "%02d:%02d", of_day / 60, of_day % 60);
  return text;
}

std::string span_words(const std::vector<Span>& spans) {
  if (spans == std::vector<Span>{{0, day_minutes}}) return "all day";
  std::vector<std::string> parts;
  for (const Span span : spans) {
    parts.push_back(clock(span.from_minute) + " to " + clock(span.to_minute));
  }
  return listed(parts);
}

using Days = std::array<bool, 7>;

std::string day_words(const Days& days) {
  if (std::all_of(days.begin(), days.end(), [](bool there) { return there; })) return "every day";
  std::vector<std::string> parts;
  for (std::size_t first = 0; first < 7; ++first) {
    if (!days[first] || days[(first + 6) % 7]) continue;  // a run begins after a day without
    std::size_t length = 1;
    while (days[(first + length) % 7]) ++length;
    const auto name = [first](std::size_t i) { return std::string(day_names[(first + i) % 7]); };
    if (length >= 3) {
      parts.push_back(name(0) + " to " + name(length - 1));
    } else {
      for (std::size_t i = 0; i < length; ++i) parts.push_back(name(i));
    }
  }
  return listed(parts);
}

}  // namespace

std::string_view name(Weekday day) {
  return day_names[static_cast<std::size_t>(day)];
}

std::string Hours::words() const {
  if (!readable_) return text_;
  std::string text;
  Days told = {};
  for (std::size_t day = 0; day < 7; ++day) {
    if (told[day] || week_[day].empty()) continue;
    Days alike = {};
    for (std::size_t other = day; other < 7; ++other) {
      alike[other] = week_[other] == week_[day];
      told[other] = told[other] || alike[other];
    }
    if (!text.empty()) text += "; ";
    text += day_words(alike) + " " + span_words(week_[day]);
  }
  if (text.empty()) return "never";
  return text == "every day all day" ? "at any time" : text;
}

}  // namespace loopwright::hours
