// 1. Every kind of selector a rule has must match; of each kind any of its items.
// 2. A date without a year is tried in the year of the day, the one before and the one behind, since it may go over
//    New Year, or be moved over it ("Jan 1 -1 day"). With years it comes once.
// 3. The nth weekday is counted from the first of the month, or back from its last; a month that has
//    no fifth one has no such day. A move by days is undone before the month is looked at.
// 4. Feb 29 is no day of a common year.
// Sources: OSM wiki Key:opening_hours/specification; ISO 8601 (week 1 has the year's first
// Thursday); Easter by the anonymous Gregorian algorithm (Meeus, Astronomical Algorithms, ch. 8).
#include "hours/day_match.hpp"

#include <algorithm>
#include <optional>

namespace loopwright::hours {
namespace {

int weekday_number(std::int64_t day) {
  return static_cast<int>(((day + 3) % 7 + 7) % 7);  // day 0 was a Thursday
}

bool is_leap(int year) {
  return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

int days_in(int year, int month) {
  constexpr int usual[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return month == 2 && is_leap(year) ? 29 : usual[month - 1];
}

/// Day of the month of the nth weekday; empty when the month has none.
std::optional<int> nth_weekday(int year, int month, int weekday, int nth) {
  const int days = days_in(year, month);
  const std::int64_t first = days_since_epoch({year, month, 1});
  const int offset = (weekday - weekday_number(first) + 7) % 7;
  const int in_month = (days - 1 - offset) / 7 + 1;
  const int which = nth > 0 ? nth - 1 : in_month + nth;
  if (which < 0 || which >= in_month) return std::nullopt;
  return 1 + offset + 7 * which;
}

std::int64_t moved_to_weekday(std::int64_t day, const DayOfYear& date) {
  if (date.to_weekday < 0) return day;
  const int on = (date.to_weekday - weekday_number(day) + 7) % 7;
  if (!date.backwards) return day + on;
  return on == 0 ? day : day + on - 7;
}

/// A date in a year; empty when that year has none.
std::optional<std::int64_t> in_year(const DayOfYear& date, int year) {
  std::int64_t day = 0;
  if (date.kind == DayOfYear::Kind::easter) {
    day = easter_of(year);
  } else if (date.kind == DayOfYear::Kind::nth_weekday) {
    const auto of_month = nth_weekday(year, date.month, date.weekday, date.nth);
    if (!of_month) return std::nullopt;
    day = days_since_epoch({year, date.month, *of_month});
  } else {
    const int last = days_in(year, date.month);
    if (date.day > last) return std::nullopt;
    day = days_since_epoch({year, date.month, date.day == 0 ? last : date.day});
  }
  return moved_to_weekday(day, date) + date.moved_days;
}

bool on_step(std::int64_t from, std::int64_t day, int step) {
  return step <= 1 || (day - from) % step == 0;
}

/// The range as it begins in one year.
bool covers_in(const DateRange& range, int year, std::int64_t day) {
  const auto from = in_year(range.from, range.from.year.value_or(year));
  if (!from || day < *from) return false;
  if (range.open_end) {
    // Without a year it lasts to the end of that year.
    const bool over = !range.from.year && day > days_since_epoch({year, 12, 31});
    return !over && on_step(*from, day, range.step);
  }
  auto to = in_year(range.to, range.to.year.value_or(year));
  // Of dates, one that ends the day before it begins is no whole year to either outside reader, but
  // empty; "Apr-Mar" is the whole year.
  if (to && range.to.day != 0 && *to + 1 == *from) return false;
  if (to && *to < *from && !range.to.year) to = in_year(range.to, year + 1);
  return to && day <= *to && on_step(*from, day, range.step);
}

bool covers(const DateRange& range, std::int64_t day) {
  const int year = date_from_days(day).year;
  if (range.from.year) return covers_in(range, *range.from.year, day);
  return covers_in(range, year, day) || covers_in(range, year - 1, day) ||
         covers_in(range, year + 1, day);
}

bool covers(const YearRange& range, std::int64_t day) {
  const int year = date_from_days(day).year;
  return range.from <= year && year <= range.to && (year - range.from) % range.step == 0;
}

int iso_week(std::int64_t day) {
  const std::int64_t thursday = day - weekday_number(day) + 3;
  const int year = date_from_days(thursday).year;
  return static_cast<int>((thursday - days_since_epoch({year, 1, 1})) / 7) + 1;
}

bool covers(const WeekRange& range, std::int64_t day) {
  constexpr int weeks = 53;
  const int week = iso_week(day);
  if (range.from <= range.to) {
    return range.from <= week && week <= range.to && (week - range.from) % range.step == 0;
  }
  if (week < range.from && week > range.to) return false;
  return (week - range.from + weeks) % weeks % range.step == 0;
}

bool is_nth(const DayItem& item, std::int64_t day) {
  const Date date = date_from_days(day);
  if ((item.weekdays >> weekday_number(day) & 1U) == 0) return false;
  return std::ranges::any_of(item.nths, [&](int nth) {
    return nth_weekday(date.year, date.month, weekday_number(day), nth) == date.day;
  });
}

bool covers(const DayItem& item, std::int64_t day, Assumption& assumption) {
  const std::int64_t named = day - item.moved_days;
  switch (item.kind) {
    case DayItem::Kind::weekdays:
      return (item.weekdays >> weekday_number(day) & 1U) != 0;
    case DayItem::Kind::nth:
      return is_nth(item, named);
    case DayItem::Kind::bank_holiday:
      return assumption.bank_holiday(named);
    case DayItem::Kind::school_holiday:
      break;
  }
  return assumption.school_holiday(day);
}

template <class Range>
bool any_covers(const std::vector<Range>& ranges, std::int64_t day) {
  return ranges.empty() ||
         std::ranges::any_of(ranges, [day](const Range& range) { return covers(range, day); });
}

}  // namespace

bool Assumption::assume(Tri known, std::int64_t day, unsigned first_bit) {
  if (known != Tri::unknown) return known == Tri::yes;
  // A rule looks at its day and the night before, moved by a day or two at most in practice.
  const std::int64_t distance = std::clamp<std::int64_t>(day - about_, -4, 3);
  const std::uint32_t bit = 1U << (first_bit + static_cast<unsigned>(distance + 4));
  asked_ |= bit;
  return (bits_ & bit) != 0;
}

bool Assumption::bank_holiday(std::int64_t day) {
  if (without_bank_ || day == left_out_) return false;
  return assume(setting_.bank_holiday(date_from_days(day)), day, 0);
}

bool Assumption::school_holiday(std::int64_t day) {
  return assume(setting_.school_holiday(date_from_days(day)), day, 8);
}

bool speaks_of(const Rule& rule, std::int64_t day, Assumption& assumption) {
  if (!any_covers(rule.years, day) || !any_covers(rule.dates, day)) return false;
  if (!any_covers(rule.weeks, day)) return false;
  return std::ranges::all_of(rule.days, [&](const DayGroup& group) {
    return std::ranges::any_of(group,
                               [&](const DayItem& item) { return covers(item, day, assumption); });
  });
}

std::int64_t easter_of(int year) {
  const int a = year % 19, b = year / 100, c = year % 100;
  const int d = b / 4, e = b % 4, f = (b + 8) / 25, g = (b - f + 1) / 3;
  const int h = (19 * a + b - d - g + 15) % 30;
  const int i = c / 4, k = c % 4, l = (32 + 2 * e + 2 * i - h - k) % 7;
  const int m = (a + 11 * h + 22 * l) / 451;
  const int sum = h + l - 7 * m + 114;
  return days_since_epoch({year, sum / 31, sum % 31 + 1});
}

}  // namespace loopwright::hours
