// years = year [ '-' year ] [ '/' n ] | year '+';  weeks = "week" n [ '-' n ] [ '/' n ]
// days = day [ '-' day ] | day '[' n { ',' n } ']' [ move ] | "PH" [ move ] | "SH"
// move = ('+' | '-') n "day"
//
// 1. A list goes on over ',' only when one of its own kind follows.
// 2. A group of weekdays and holidays is joined by ','; a second group beside it narrows the first
//    ("SH Mo-Fr": weekdays of the school holidays), but two groups of weekdays alone are one list
//    whose ',' was forgotten.
// Source: OSM wiki Key:opening_hours/specification, year, week, weekday and holiday selectors.
#include "hours/read_days.hpp"

#include <algorithm>
#include <limits>

#include "hours/day_words.hpp"

namespace loopwright::hours {
namespace {

constexpr int first_year = 1900, last_year = 2999, last_week = 53;

bool is_year(const TokenReader& reader, std::size_t ahead = 0) {
  const Token& token = reader.peek(ahead);
  return token.kind == Token::Kind::number && token.digits == 4 && token.number >= first_year &&
         token.number <= last_year;
}

/// "/2" at a range; false when what follows the stroke is no number above 0.
bool read_step(TokenReader& reader, int& step) {
  if (!reader.take("/")) return true;
  if (!reader.is_number() || reader.peek().number == 0) return reader.stop("a number above 0");
  step = *reader.take_number();
  return true;
}

/// Goes on past a ',' when `begins` is true behind it.
template <class Begins>
bool goes_on(TokenReader& reader, Begins begins) {
  if (!reader.is(",")) return false;
  const std::size_t before = reader.at();
  reader.skip();
  if (begins()) return true;
  reader.return_to(before);
  return false;
}

bool read_year_range(TokenReader& reader, std::vector<YearRange>& years) {
  YearRange range;
  range.from = range.to = *reader.take_number();
  const bool has_end = reader.is("-") && is_year(reader, 1);
  if (reader.take("+")) {
    range.to = std::numeric_limits<int>::max();
  } else if (has_end) {
    reader.skip();
    if (reader.peek().number < range.from) return reader.stop("a year not before the first");
    range.to = *reader.take_number();
  }
  if (!has_end && reader.is("/")) range.to = std::numeric_limits<int>::max();
  if (!read_step(reader, range.step)) return false;
  years.push_back(range);
  return true;
}

bool read_week_number(TokenReader& reader, int& week) {
  const bool fits = reader.is_number() && reader.peek().number >= 1 &&
                    reader.peek().number <= last_week && reader.peek().digits <= 2;
  if (!fits) return reader.stop("a week from 1 to 53");
  week = *reader.take_number();
  return true;
}

bool read_week_range(TokenReader& reader, std::vector<WeekRange>& weeks) {
  WeekRange range;
  if (!read_week_number(reader, range.from)) return false;
  range.to = range.from;
  if (reader.take("-") && !read_week_number(reader, range.to)) return false;
  if (!read_step(reader, range.step)) return false;
  weeks.push_back(range);
  return true;
}

/// "+1 day", "-2 days"; days stays 0 when there is none.
void read_move(TokenReader& reader, int& days) {
  const bool sign = reader.is("+") || reader.is("-");
  if (!sign || !reader.is_number(1)) return;
  if (!reader.is("day", 2) && !reader.is("days", 2)) return;
  days = reader.is("-") ? -reader.peek(1).number : reader.peek(1).number;
  constexpr int most = 366;
  days = std::clamp(days, -most, most);
  reader.skip(3);
}

bool read_nth(TokenReader& reader, int& nth) {
  const bool from_the_end = reader.take("-");
  const bool fits = reader.is_number() && reader.peek().number >= 1 && reader.peek().number <= 5;
  if (!fits) return reader.stop("a number from 1 to 5");
  nth = *reader.take_number();
  if (from_the_end) nth = -nth;
  return true;
}

/// What stands in the brackets of "Mo[1,3-4,-1]".
bool read_nths(TokenReader& reader, std::vector<int>& nths) {
  do {
    int first = 0;
    if (!read_nth(reader, first)) return false;
    int last = first;
    if (first > 0 && reader.take("-") && !read_nth(reader, last)) return false;
    if (last < first) return reader.stop("a number not below the first");
    for (int nth = first; nth <= last; ++nth) nths.push_back(nth);
  } while (reader.take(","));
  return reader.take("]") || reader.stop("]");
}

std::uint8_t weekday_bits(int first, int last) {
  std::uint8_t bits = 0;
  for (int day = first;; day = (day + 1) % 7) {
    bits = static_cast<std::uint8_t>(bits | 1U << day);
    if (day == last) return bits;
  }
}

bool read_weekdays(TokenReader& reader, DayItem& item) {
  const int first = *weekday_of(reader.peek());
  reader.skip();
  item.weekdays = weekday_bits(first, first);
  if (reader.take("[")) {
    item.kind = DayItem::Kind::nth;
    if (!read_nths(reader, item.nths)) return false;
    read_move(reader, item.moved_days);
    return true;
  }
  const auto last = reader.is("-") ? weekday_of(reader.peek(1)) : std::nullopt;
  if (!last) return true;
  reader.skip(2);
  item.weekdays = weekday_bits(first, *last);
  return true;
}

bool read_day_item(TokenReader& reader, DayItem& item) {
  if (weekday_of(reader.peek())) return read_weekdays(reader, item);
  item.kind = reader.is("ph") ? DayItem::Kind::bank_holiday : DayItem::Kind::school_holiday;
  reader.skip();
  if (item.kind == DayItem::Kind::bank_holiday) read_move(reader, item.moved_days);
  return true;
}

bool weekdays_alone(const DayGroup& group) {
  return std::ranges::all_of(group, [](const DayItem& item) {
    return item.kind == DayItem::Kind::weekdays || item.kind == DayItem::Kind::nth;
  });
}

}  // namespace

bool at_year(const TokenReader& reader) {
  return is_year(reader) && !at_date(reader);
}

bool read_years(TokenReader& reader, std::vector<YearRange>& years) {
  do {
    if (!read_year_range(reader, years)) return false;
  } while (goes_on(reader, [&] { return is_year(reader); }));  // "2025,2026 Nov": of both years
  return true;
}

bool at_week(const TokenReader& reader) {
  return reader.is("week");
}

bool read_weeks(TokenReader& reader, std::vector<WeekRange>& weeks) {
  do {
    reader.take("week");
    if (!read_week_range(reader, weeks)) return false;
  } while (goes_on(reader, [&] {
    return at_week(reader) ||
           (reader.is_number() && reader.peek().digits <= 2 && !reader.is_clock());
  }));
  return true;
}

bool at_day(const TokenReader& reader) {
  return weekday_of(reader.peek()) || reader.is("ph") || reader.is("sh");
}

bool read_day_group(TokenReader& reader, std::vector<DayGroup>& groups) {
  DayGroup group;
  do {
    if (!read_day_item(reader, group.emplace_back())) return false;
  } while (goes_on(reader, [&] { return at_day(reader); }));
  if (!groups.empty() && weekdays_alone(groups.back()) && weekdays_alone(group)) {
    groups.back().insert(groups.back().end(), group.begin(), group.end());
  } else {
    groups.push_back(std::move(group));
  }
  return true;
}

}  // namespace loopwright::hours
