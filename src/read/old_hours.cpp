// 1. Days by their names in English, whole or cut short ("Monday", "Mon", "mo").
// 2. Hours as HH:MM, or H:MM with a zero put before.
// 3. Of each pair both or none must be there. What isn't so is told as it stands: nobody reads it.
#include "old_hours.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "loopwright/base/text.hpp"

namespace loopwright::read {
namespace {

/// "Mo" of "Monday"; empty when it is no day.
std::optional<std::string> day_of(std::string_view text) {
  constexpr std::array<std::string_view, 7> days{"monday", "tuesday",  "wednesday", "thursday",
                                                 "friday", "saturday", "sunday"};
  const std::string name = lower(trim(text));
  if (name.size() < 2) return std::nullopt;
  const auto day = std::ranges::find_if(days, [&](auto d) { return d.starts_with(name); });
  if (day == days.end()) return std::nullopt;
  return std::string{static_cast<char>((*day)[0] - 'a' + 'A'), (*day)[1]};
}

/// "07:00" of "7:00"; empty when it is no time.
std::optional<std::string> time_of(std::string_view text) {
  std::string time(trim(text));
  if (time.size() == 4) time.insert(0, "0");
  const std::string digits = time.substr(0, 2) + (time.size() == 5 ? time.substr(3) : "x");
  const bool all_digits = std::ranges::all_of(digits, [](char c) { return c >= '0' && c <= '9'; });
  if (!all_digits || time[2] != ':') return std::nullopt;
  return time;
}

using ReadOne = std::optional<std::string> (*)(std::string_view);

/// "Mo-Fr" of two keys, empty when neither is there; none when they can't be read.
std::optional<std::string> span_of(std::string_view from, std::string_view to, ReadOne read) {
  if (from.empty() && to.empty()) return std::string();
  const auto first = read(from), last = read(to);
  if (!first || !last) return std::nullopt;
  return *first == *last && read == day_of ? *first : *first + "-" + *last;
}

std::string as_it_stands(const mark::Tags& tags) {
  std::string text;
  for (const std::string_view key : {"day_on", "day_off", "hour_on", "hour_off"}) {
    if (!tags.has(key)) continue;
    if (!text.empty()) text += ' ';
    text.append(key).append("=").append(tags.get(key));
  }
  return text;
}

}  // namespace

std::string old_hours(const mark::Tags& tags) {
  const auto days = span_of(tags.get("day_on"), tags.get("day_off"), day_of);
  const auto times = span_of(tags.get("hour_on"), tags.get("hour_off"), time_of);
  if (!days || !times) return as_it_stands(tags);
  return std::string(trim(*days + " " + *times));
}

}  // namespace loopwright::read
