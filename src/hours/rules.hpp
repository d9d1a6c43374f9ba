// A text of hours once it is read: rules in their order, each with the days and times it speaks of.
//
// Rules: private to hours. Plain data; nothing in it changes after reading. An empty list of
// selectors means every year, date, week or day; an empty list of spans the whole day.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/hours/answer.hpp"

namespace loopwright::hours {

inline constexpr int day_minutes = 1440;

/// 2020-2030/2; `to` is huge for 2020+.
struct YearRange {
  int from = 0, to = 0, step = 1;
  friend bool operator==(const YearRange&, const YearRange&) = default;
};

/// ISO weeks; a range may go over the end of the year.
struct WeekRange {
  int from = 1, to = 1, step = 1;
  friend bool operator==(const WeekRange&, const WeekRange&) = default;
};

/// A day of the year: a date, Easter Sunday, or the nth weekday of a month, moved by some days.
struct DayOfYear {
  enum class Kind : std::uint8_t { date, easter, nth_weekday };
  Kind kind = Kind::date;
  std::optional<int> year;
  int month = 1;
  int day = 1;          ///< of a date; 0: the last of the month
  int weekday = 0;      ///< of nth_weekday, Monday 0
  int nth = 1;          ///< 1 to 5, or from the end -1 to -5
  int to_weekday = -1;  ///< then on to the next (or back to the last) such weekday; -1: no
  bool backwards = false;
  int moved_days = 0;
  friend bool operator==(const DayOfYear&, const DayOfYear&) = default;
};

/// Both ends included. Without years it comes every year, and may go over New Year.
struct DateRange {
  DayOfYear from, to;
  bool open_end = false;
  int step = 1;  ///< every so many days from `from`
  friend bool operator==(const DateRange&, const DateRange&) = default;
};

/// One item of "Mo-Fr,Sa[-1],PH".
struct DayItem {
  enum class Kind : std::uint8_t { weekdays, nth, bank_holiday, school_holiday };
  Kind kind = Kind::weekdays;
  std::uint8_t weekdays = 0;   ///< bits, Monday lowest
  std::vector<int> nths = {};  ///< of nth: which of the month
  int moved_days = 0;          ///< "Mo[1] +1 day", "PH -1 day": the day named and so many on
  friend bool operator==(const DayItem&, const DayItem&) = default;
};
/// Any of its items.
using DayGroup = std::vector<DayItem>;

enum class SunEvent : std::uint8_t { none, dawn, sunrise, sunset, dusk };

struct ClockTime {
  SunEvent event = SunEvent::none;
  int minutes = 0;  ///< after midnight, or after the event
  friend bool operator==(const ClockTime&, const ClockTime&) = default;
};

/// From a time until another; past midnight when the end is not after the beginning.
struct TimeSpan {
  ClockTime from, to;
  bool open_end = false;  ///< until nobody says when
  friend bool operator==(const TimeSpan&, const TimeSpan&) = default;
};

enum class Joint : std::uint8_t { replaces, adds, falls_back };
enum class State : std::uint8_t { in_force, off, unknown };

struct Rule {
  Joint joint = Joint::replaces;
  std::vector<YearRange> years;
  std::vector<DateRange> dates;
  std::vector<WeekRange> weeks;
  std::vector<DayGroup> days;  ///< all of them
  std::vector<TimeSpan> spans;
  State state = State::in_force;
  bool by_comment = false;      ///< unknown, since words stand instead
  bool replaces_whole = false;  ///< leaves nothing of an earlier rule (replaced.hpp)
  Slice comment = {};           ///< without its quotes
  Slice text = {};
};

/// False when it speaks of every day.
inline bool names_days(const Rule& rule) {
  return !rule.years.empty() || !rule.dates.empty() || !rule.weeks.empty() || !rule.days.empty();
}

struct Rules {
  std::vector<Rule> rules;
  std::vector<int> holiday_moves;  ///< of every bank holiday named: by how many days it is moved
  bool any_replaced = false;       ///< some rule replaces a whole one
};

}  // namespace loopwright::hours
