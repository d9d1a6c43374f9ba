// Questions to a week of spans. The answer can change only where a span begins or ends, so the
// next change is the first of those, from the night before to eight days on, at which it does.
#include "loopwright/hours/hours.hpp"

#include <algorithm>
#include <cassert>

#include "hours/parse.hpp"
#include "hours/week.hpp"

namespace loopwright::hours {
namespace {

constexpr int days_ahead = 8;

int day_of(std::int64_t days) {
  return static_cast<int>(weekday_of(date_from_days(days)));
}

int minute_of_day(const CivilTime& time) {
  return time.hour * 60 + time.minute;
}

/// Minutes from the midnight before `start`, ascending.
std::vector<int> boundaries(const Week& week, std::int64_t start_days) {
  std::vector<int> minutes;
  for (int ahead = -1; ahead <= days_ahead; ++ahead) {
    for (const Span span : week[static_cast<std::size_t>(day_of(start_days + ahead))]) {
      minutes.push_back(ahead * day_minutes + span.from_minute);
      minutes.push_back(ahead * day_minutes + span.to_minute);
    }
  }
  std::sort(minutes.begin(), minutes.end());
  return minutes;
}

}  // namespace

Hours read_hours(std::string_view text) {
  Parsed parsed = parse(text);
  Hours hours;
  hours.text_ = text;
  hours.readable_ = parsed.week.has_value();
  hours.stopped_at_ = parsed.stopped_at;
  if (parsed.week) hours.week_ = std::move(*parsed.week);
  return hours;
}

Tri Hours::in_force(const CivilTime& at) const {
  if (!readable_) return Tri::unknown;
  const int day = static_cast<int>(weekday_of(at.date));
  return covers(week_, day, minute_of_day(at)) ? Tri::yes : Tri::no;
}

std::optional<CivilTime> Hours::next_change(const CivilTime& at) const {
  const Tri now = in_force(at);
  if (now == Tri::unknown) return std::nullopt;
  const std::int64_t today = days_since_epoch(at.date);
  for (const int minute : boundaries(week_, today)) {
    if (minute <= minute_of_day(at)) continue;
    const int of_day = minute % day_minutes;
    const CivilTime then = {date_from_days(today + minute / day_minutes), of_day / 60, of_day % 60,
                            0};
    if (in_force(then) != now) return then;
  }
  return std::nullopt;
}

Tri Hours::through(const CivilTime& from, const CivilTime& to) const {
  assert(from <= to);
  const std::optional<CivilTime> change = next_change(from);
  return change && *change <= to ? Tri::unknown : in_force(from);
}

}  // namespace loopwright::hours
