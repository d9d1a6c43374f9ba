// Walks along the answers of a timed text from moment to moment, over changes of the clock.
//
// Rules: private to hours. Timed has `auto ask(const CivilTime&)` and
// `CivilTime next_look(const CivilTime&)`: the first minute on the same clock at which another
// answer is possible.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>

#include "loopwright/hours/setting.hpp"

namespace loopwright::hours {

inline constexpr std::int64_t day_seconds = 86'400;

/// The next moment after `at` at which the answer may change: the next look on the clock as it
/// goes, or the moment the clocks are changed when that is earlier.
template <class Timed>
Instant next_moment(const Timed& timed, const Instant& at, const Setting& setting) {
  const Instant here = setting.on_clock(at);
  const CivilTime civil = here.civil();
  const std::int64_t ahead_s = civil_seconds(timed.next_look(civil)) - civil_seconds(civil);
  const Instant look = here.plus_seconds(ahead_s);
  const auto clock_change = setting.next_clock_change(here);
  const bool changes_first = clock_change && clock_change->unix_s < look.unix_s;
  return setting.on_clock(changes_first ? *clock_change : look);
}

/// Calls f(answer, moment) for `from` and every later moment of the closed interval at which the
/// answer may change, until f returns false.
template <class Timed, class F>
void along(const Timed& timed, const Instant& from, const Instant& to, const Setting& setting,
           F&& f) {
  Instant at = setting.on_clock(from);
  while (f(timed.ask(at.civil()), at)) {
    at = next_moment(timed, at, setting);
    if (at.unix_s > to.unix_s) return;
  }
}

/// The first moment after `at` for whose answer differs(answer) is true.
template <class Timed, class Differs>
std::optional<Instant> first_moment(const Timed& timed, const Instant& at, const Setting& setting,
                                    std::int64_t ahead_days, Differs&& differs) {
  std::optional<Instant> found;
  along(timed, at, at.plus_seconds(ahead_days * day_seconds), setting,
        [&](const auto& answer, const Instant& moment) {
          if (moment.unix_s > at.unix_s && differs(answer)) found = moment;
          return !found.has_value();
        });
  return found;
}

}  // namespace loopwright::hours
