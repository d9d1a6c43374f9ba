// dates = date [ '-' (date | day) ] [ '/' n ] | date '+' | [year] month [ '-' [year] month ]
// date = [year] (month day | month weekday '[' n ']' | "easter") [ ('+'|'-') weekday ] [ move ]
//
// 1. A month alone is its first until its last day.
// 2. After ',' a further day of the same month may stand alone ("Dec 24,26").
// 3. A number that ':' and minutes follow is no day but the time of the rule; a ':' before anything
//    else is for the eye ("Dec 25: off").
// 4. A day that no year has (Feb 30) can't be read; as the end of a range it is the last of its month.
// Source: OSM wiki Key:opening_hours/specification, monthday selector.
#include <array>

#include "hours/day_words.hpp"
#include "hours/read_days.hpp"

namespace loopwright::hours {
namespace {

constexpr std::array<int, 12> most_days{31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

bool has_year(const TokenReader& reader) {
  return reader.is_number() && reader.peek().digits == 4 && reader.peek().number >= 1900;
}

bool names_month(const TokenReader& reader, std::size_t ahead) {
  return month_of(reader.peek(ahead)) || reader.is("easter", ahead);
}

bool at_day_number(const TokenReader& reader, std::size_t ahead = 0) {
  return reader.is_number(ahead) && reader.peek(ahead).digits <= 2 && !reader.is_clock(ahead);
}

enum class LastDay : std::uint8_t { of_month, any };

/// any: an end such as Feb 31 is the end of that month.
bool read_day_number(TokenReader& reader, DayOfYear& date, LastDay last = LastDay::of_month) {
  const int of_month = most_days[static_cast<std::size_t>(date.month - 1)];
  const int most = last == LastDay::any ? 31 : of_month;
  if (reader.peek().number < 1 || reader.peek().number > most) {
    return reader.stop("a day of that month");
  }
  const int day = *reader.take_number();
  date.day = day > of_month ? 0 : day;
  return true;
}

bool read_nth_weekday(TokenReader& reader, DayOfYear& date) {
  date.kind = DayOfYear::Kind::nth_weekday;
  date.weekday = *weekday_of(reader.peek());
  reader.skip(2);
  const bool from_the_end = reader.take("-");
  if (!reader.is_number() || reader.peek().number < 1 || reader.peek().number > 5) {
    return reader.stop("a number from 1 to 5");
  }
  date.nth = *reader.take_number();
  if (from_the_end) date.nth = -date.nth;
  return reader.take("]") || reader.stop("]");
}

/// "+Su": on to the next Sunday; "-1 day": the day before.
void read_moves(TokenReader& reader, DayOfYear& date) {
  const bool sign = reader.is("+") || reader.is("-");
  if (const auto weekday = weekday_of(reader.peek(1)); sign && weekday && date.day != 0) {
    date.backwards = reader.is("-");
    // "Dec 25-Su" could be a range of a date and a weekday, which nobody writes.
    date.to_weekday = *weekday;
    reader.skip(2);
  }
  const bool moved = (reader.is("+") || reader.is("-")) && reader.is_number(1) &&
                     (reader.is("day", 2) || reader.is("days", 2));
  if (!moved) return;
  constexpr int most = 366;
  const int days = std::min(reader.peek(1).number, most);
  date.moved_days = reader.is("-") ? -days : days;
  reader.skip(3);
}

/// "Su[-1]" behind a month; "Su[1,3]" is a weekday of its own, which narrows the month.
bool at_nth_weekday(const TokenReader& reader) {
  if (!weekday_of(reader.peek()) || !reader.is("[", 1)) return false;
  const std::size_t number = reader.is("-", 2) ? 3 : 2;
  return reader.is_number(number) && reader.is("]", number + 1);
}

/// "Su[-1],Sa" behind a month: weekdays of that month, say both outside readers.
bool lists_weekdays(const TokenReader& reader) {
  const std::size_t comma = reader.is("-", 2) ? 5 : 4;
  const bool holiday = reader.is("ph", comma + 1) || reader.is("sh", comma + 1);
  return reader.is(",", comma) && (holiday || weekday_of(reader.peek(comma + 1)));
}

/// not_listed: one that no further weekday follows.
enum class NthWeekday : std::uint8_t { allowed, not_listed, none };

/// One date; of a month alone `day` stays 0, for the caller to settle.
bool read_date(TokenReader& reader, DayOfYear& date, NthWeekday nth_weekday,
               LastDay last = LastDay::of_month) {
  if (has_year(reader)) date.year = *reader.take_number();
  if (reader.take("easter")) {
    date.kind = DayOfYear::Kind::easter;
    read_moves(reader, date);
    return true;
  }
  const auto month = month_of(reader.peek());
  if (!month) return reader.stop("a month");
  reader.skip();
  date.month = *month;
  date.day = 0;
  const bool narrows = nth_weekday == NthWeekday::not_listed && lists_weekdays(reader);
  if (nth_weekday != NthWeekday::none && at_nth_weekday(reader) && !narrows) {
    if (!read_nth_weekday(reader, date)) return false;
    date.day = 1;
    read_moves(reader, date);
    return true;
  }
  if (!at_day_number(reader)) return true;
  if (!read_day_number(reader, date, last)) return false;
  read_moves(reader, date);
  return true;
}

bool is_month_alone(const DayOfYear& date) {
  return date.kind == DayOfYear::Kind::date && date.day == 0;
}

bool at_date_end(const TokenReader& reader) {
  return reader.is("-") && (at_day_number(reader, 1) || names_month(reader, 1) ||
                            (reader.is_number(1) && names_month(reader, 2)));
}

/// What follows "Dec 24-".
bool read_range_end(TokenReader& reader, DateRange& range) {
  reader.skip();
  if (!at_day_number(reader)) {
    // Behind a month a weekday narrows: "Mar-Oct Su[1]" are the first Sundays of these months.
    const NthWeekday nth = is_month_alone(range.from) ? NthWeekday::none : NthWeekday::allowed;
    range.to = DayOfYear{};  // nothing of the first date ("easter-Oct 31", "2026 Nov-Feb")
    if (!read_date(reader, range.to, nth, LastDay::any)) return false;
    // Easter's year is found from the first date.
    if (range.to.year || !range.from.year || range.to.kind == DayOfYear::Kind::easter) return true;
    range.to.year = range.from.year;
    if (range.to.month < range.from.month) ++*range.to.year;  // over New Year
    return true;
  }
  if (range.from.kind != DayOfYear::Kind::date || is_month_alone(range.from)) {
    return reader.stop("a date");
  }
  range.to = range.from;
  if (reader.peek().number < range.from.day) return reader.stop("a day not before the first");
  return read_day_number(reader, range.to);
}

bool read_step(TokenReader& reader, DateRange& range) {
  if (!reader.take("/")) return true;
  if (!reader.is_number() || reader.peek().number == 0) return reader.stop("a number above 0");
  range.step = *reader.take_number();
  return true;
}

bool finish_range(TokenReader& reader, DateRange& range) {
  range.to = range.from;
  if (reader.take("+")) {
    range.open_end = true;
  } else if (at_date_end(reader) && !read_range_end(reader, range)) {
    return false;
  }
  if (is_month_alone(range.from)) range.from.day = 1;
  return read_step(reader, range);
}

bool read_range(TokenReader& reader, std::vector<DateRange>& dates) {
  // "Apr,Sep Fr[-1]": the last Fridays of both months.
  const bool behind_month = !dates.empty() && is_month_alone(dates.back().to);
  const NthWeekday nth = behind_month ? NthWeekday::none : NthWeekday::not_listed;
  DateRange& range = dates.emplace_back();
  return read_date(reader, range.from, nth) && finish_range(reader, range);
}

/// "26" behind "Dec 24,".
bool read_further_day(TokenReader& reader, std::vector<DateRange>& dates) {
  DateRange range;
  range.from = dates.back().from;
  range.from.moved_days = 0, range.from.to_weekday = -1;
  if (!read_day_number(reader, range.from)) return false;
  read_moves(reader, range.from);
  dates.push_back(range);
  return finish_range(reader, dates.back());
}

}  // namespace

bool at_date(const TokenReader& reader) {
  return names_month(reader, has_year(reader) ? 1 : 0);
}

bool read_dates(TokenReader& reader, std::vector<DateRange>& dates) {
  if (!read_range(reader, dates)) return false;
  while (reader.is(",")) {
    const std::size_t before = reader.at();
    reader.skip();
    if (at_date(reader)) {
      if (!read_range(reader, dates)) return false;
    } else if (at_day_number(reader) && dates.back().from.kind == DayOfYear::Kind::date) {
      if (!read_further_day(reader, dates)) return false;
    } else {
      reader.return_to(before);
      return true;
    }
  }
  return true;
}

}  // namespace loopwright::hours
