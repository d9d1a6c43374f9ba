// 1. A time by the sun is that of the day the span begins on; an end by the sun that lies behind
//    midnight is that of the next day.
// 2. An end nobody knows is put where the reference implementation puts it: at midnight; of a
//    beginning from 17:00 on ten hours later, from 22:00 on eight.
#include "hours/day_times.hpp"

#include <algorithm>

namespace loopwright::hours {
namespace {

std::optional<int> event_of(SunEvent event, const SunTimes& sun) {
  switch (event) {
    case SunEvent::dawn:
      return sun.dawn;
    case SunEvent::sunrise:
      return sun.sunrise;
    case SunEvent::sunset:
      return sun.sunset;
    default:
      return sun.dusk;
  }
}

std::optional<int> minute_of(const ClockTime& time, std::int64_t day, const Setting& setting) {
  if (time.event == SunEvent::none) return time.minutes;
  const auto sun = setting.sun(date_from_days(day));
  const auto event = sun ? event_of(time.event, *sun) : std::nullopt;
  return event ? std::optional(*event + time.minutes) : std::nullopt;
}

int end_of_open(int from) {
  constexpr int evening = 17 * 60, night = 22 * 60;
  if (from >= night) return from + 8 * 60;
  return from >= evening ? from + 10 * 60 : day_minutes;
}

}  // namespace

std::optional<Minutes> minutes_on(const TimeSpan& span, std::int64_t day, const Setting& setting) {
  const auto from = minute_of(span.from, day, setting);
  if (!from) return std::nullopt;
  if (span.open_end) return Minutes{*from, std::min(end_of_open(*from), 2 * day_minutes)};
  auto to = minute_of(span.to, day, setting);
  if (to && span.to.event != SunEvent::none && *to <= *from) {
    to = minute_of(span.to, day + 1, setting);
    if (to) *to += day_minutes;
  }
  if (!to) return std::nullopt;
  return Minutes{*from, *to};
}

Minutes widest_minutes(const TimeSpan& span) {
  const bool told_to = span.to.event == SunEvent::none && !span.open_end;
  return {span.from.event == SunEvent::none ? span.from.minutes : 0,
          told_to ? span.to.minutes : 2 * day_minutes};
}

}  // namespace loopwright::hours
