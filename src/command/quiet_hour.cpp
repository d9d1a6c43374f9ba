// Method: quarter by quarter of an hour; days are short enough for that.
#include "command/quiet_hour.hpp"

namespace loopwright::command {
namespace {

constexpr std::int64_t minute_s = 60, quarter_s = 15 * minute_s, hour_s = 60 * minute_s,
                       day_s = 24 * hour_s;

int minute_of_day(const CivilTime& time) {
  constexpr int minutes_an_hour = 60;
  return time.hour * minutes_an_hour + time.minute;
}

/// Between sunrise and sunset all through; where the sun doesn't rise or set that day nobody knows.
bool is_light(const Instant& from, const Instant& to, const hours::Setting& setting) {
  const CivilTime first = from.civil(), last = to.civil();
  const auto sun = setting.sun(first.date);
  return sun && first.date == last.date && minute_of_day(first) >= sun->sunrise &&
         minute_of_day(last) < sun->sunset;
}

}  // namespace

std::string why_not_quiet(const QuietAsk& ask, const Instant& start,
                          const hours::Setting& setting) {
  const Instant from = setting.on_clock(start);
  const Instant to = setting.on_clock(start.plus_seconds(minute_s * ask.minutes));
  if (ask.quiet.through(from, to, setting).in_force != hours::Tri::yes)
    return "that isn't in the quiet hours all through";
  return is_light(from, to, setting) ? "" : "it isn't light all through";
}

std::optional<Instant> next_quiet(const QuietAsk& ask, const Instant& from, int days,
                                  const hours::Setting& setting) {
  const std::int64_t first = (from.unix_s + quarter_s - 1) / quarter_s * quarter_s;
  for (std::int64_t s = first; s <= from.unix_s + days * day_s; s += quarter_s) {
    const Instant at = setting.on_clock({s, from.offset_s});
    if (why_not_quiet(ask, at, setting).empty()) return at;
  }
  return std::nullopt;
}

}  // namespace loopwright::command
