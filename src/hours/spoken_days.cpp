// 1. Weekdays: runs of three and more with "to" (a run may go over Sunday), others listed.
// 2. Selectors that narrow each other are put side by side, the smallest first: weekdays, then
//    weeks, dates and years. A holiday that must also be a weekday falls on it.
#include "hours/spoken_days.hpp"

#include <algorithm>
#include <array>
#include <limits>

#include "loopwright/base/plain_words.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::hours {
namespace {

std::string weekday_name(int day) {
  return std::string(name(static_cast<Weekday>(day)));
}

bool has(std::uint8_t bits, int day) {
  return (bits >> (day % 7) & 1U) != 0;
}

std::string weekdays_words(std::uint8_t bits) {
  constexpr std::uint8_t all = 0x7f;
  if (bits == all) return "every day";
  std::vector<std::string> parts;
  for (int first = 0; first < 7; ++first) {
    // A run that goes over Sunday is named where it begins.
    if (!has(bits, first) || has(bits, first + 6)) continue;
    int last = first;
    while (has(bits, last + 1)) ++last;
    const int length = last - first + 1;
    if (length >= 3) {
      parts.push_back(weekday_name(first) + " to " + weekday_name(last % 7));
    } else {
      for (int day = first; day <= last; ++day) parts.push_back(weekday_name(day % 7));
    }
  }
  return listed(parts);
}

std::string ordinal(int nth) {
  constexpr std::array<std::string_view, 5> from_start{"first", "second", "third", "fourth",
                                                       "fifth"};
  if (nth == -1) return "last";
  if (nth > 0) return std::string(from_start[static_cast<std::size_t>(nth - 1)]);
  return std::string(from_start[static_cast<std::size_t>(-nth - 1)]) + " last";
}

std::string moved(const std::string& what, int days) {
  if (days == 0) return what;
  const int off = days < 0 ? -days : days;
  const std::string count = off == 1 ? "the day" : number_word(off) + " days";
  return count + (days < 0 ? " before " : " after ") + what;
}

std::string item_words(const DayItem& item) {
  switch (item.kind) {
    case DayItem::Kind::weekdays:
      return weekdays_words(item.weekdays);
    case DayItem::Kind::bank_holiday:
      return item.moved_days == 0 ? "bank holidays" : moved("a bank holiday", item.moved_days);
    case DayItem::Kind::school_holiday:
      return "school holidays";
    case DayItem::Kind::nth:
      break;
  }
  std::vector<std::string> which;
  for (const int nth : item.nths) which.push_back(ordinal(nth));
  const std::string day = "the " + listed(which) + " " + weekdays_words(item.weekdays);
  return moved(day + " of the month", item.moved_days);
}

std::string group_words(const DayGroup& group) {
  std::uint8_t weekdays = 0;
  std::vector<std::string> parts;
  for (const DayItem& item : group) {
    if (item.kind == DayItem::Kind::weekdays) {
      weekdays = static_cast<std::uint8_t>(weekdays | item.weekdays);
    } else {
      parts.push_back(item_words(item));
    }
  }
  if (weekdays != 0) parts.insert(parts.begin(), weekdays_words(weekdays));
  return listed(parts);
}

std::string month_name(int month) {
  constexpr std::array<std::string_view, 12> names{"January",   "February", "March",    "April",
                                                   "May",       "June",     "July",     "August",
                                                   "September", "October",  "November", "December"};
  return std::string(names[static_cast<std::size_t>(month - 1)]);
}

std::string date_words(const DayOfYear& date) {
  std::string text;
  if (date.kind == DayOfYear::Kind::easter) {
    text = "Easter Sunday";
  } else if (date.kind == DayOfYear::Kind::nth_weekday) {
    text = "the " + ordinal(date.nth) + " " + weekday_name(date.weekday) + " in " +
           month_name(date.month);
  } else {
    text = (date.day == 0 ? "the end of" : std::to_string(date.day)) + " " + month_name(date.month);
  }
  if (date.to_weekday >= 0) {
    text = "the " + weekday_name(date.to_weekday) + (date.backwards ? " up to " : " from ") + text;
  }
  if (date.year) text += " " + std::to_string(*date.year);
  return moved(text, date.moved_days);
}

bool is_month(const DateRange& range) {
  return range.from.kind == DayOfYear::Kind::date && range.to.kind == DayOfYear::Kind::date &&
         range.from.day == 1 && range.to.day == 0 && !range.from.year && !range.open_end;
}

std::string range_words(const DateRange& range) {
  std::string text;
  if (is_month(range)) {
    text = month_name(range.from.month);
    if (range.to.month != range.from.month) text += " to " + month_name(range.to.month);
  } else if (range.open_end) {
    text = "from " + date_words(range.from) + " on";
  } else {
    const std::string from = date_words(range.from), to = date_words(range.to);
    text = from == to ? from : from + " to " + to;
  }
  return range.step > 1 ? text + " every " + number_word(range.step) + " days" : text;
}

template <class Range>
std::string numbered(const Range& range, const std::string& what) {
  std::string text = std::to_string(range.from);
  if (range.to == std::numeric_limits<int>::max()) {
    text = "from " + text + " on";
  } else if (range.to != range.from) {
    text += " to " + std::to_string(range.to);
  }
  return range.step > 1 ? text + " every " + number_word(range.step) + " " + what : text;
}

bool is_range(const YearRange& range) {
  return range.to != range.from;
}

template <class Ranges, class Words>
void add(std::vector<std::string>& parts, const Ranges& ranges, Words words_of) {
  std::vector<std::string> list;
  for (const auto& range : ranges) list.push_back(words_of(range));
  if (!list.empty()) parts.push_back(listed(list));
}

/// A group of bank holidays or of school holidays alone.
bool is_kind(const DayGroup& group, DayItem::Kind kind) {
  return std::ranges::all_of(group, [kind](const DayItem& item) { return item.kind == kind; });
}

/// Weekdays first, since a holiday is best said to fall on them.
int narrowing_order(const DayGroup& group) {
  if (is_kind(group, DayItem::Kind::bank_holiday)) return 3;
  if (is_kind(group, DayItem::Kind::school_holiday)) return 2;
  const bool weekdays = is_kind(group, DayItem::Kind::weekdays);
  return weekdays ? 0 : 1;
}

/// Two groups of which a day must be in both, the second being the weekdays mostly.
std::string narrowed(const DayGroup& group, const std::string& words) {
  if (is_kind(group, DayItem::Kind::school_holiday)) return words + " in the school holidays";
  if (is_kind(group, DayItem::Kind::bank_holiday)) {
    return group_words(group) + " that fall on " + words;
  }
  return words + " that are also " + group_words(group);
}

}  // namespace

std::string weekdays_in_words(std::uint8_t bits) {
  return weekdays_words(bits);
}

std::string days_in_words(const Rule& rule) {
  std::vector<std::string> parts;
  std::vector<DayGroup> groups = rule.days;
  std::ranges::stable_sort(groups, {}, narrowing_order);
  for (const DayGroup& group : groups) {
    if (parts.empty()) {
      parts.push_back(group_words(group));
    } else {
      parts.back() = narrowed(group, parts.back());
    }
  }
  add(parts, rule.weeks, [](const WeekRange& r) {
    return (r.from == r.to ? "week " : "weeks ") + numbered(r, "weeks");
  });
  const bool one_month = rule.dates.size() == 1 && is_month(rule.dates.front()) &&
                         rule.dates.front().from.month == rule.dates.front().to.month;
  if (one_month && !parts.empty()) {
    parts.back() += " in " + range_words(rule.dates.front());
  } else {
    add(parts, rule.dates, range_words);
  }
  const bool with_in = !parts.empty() && std::ranges::none_of(rule.years, is_range);
  add(parts, rule.years, [&](const YearRange& r) {
    return (with_in && &r == rule.years.data() ? "in " : "") + numbered(r, "years");
  });
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : ", ") + part;
  return text;
}

}  // namespace loopwright::hours
