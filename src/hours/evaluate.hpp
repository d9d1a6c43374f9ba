// What rules say of one minute.
//
// Rules: private to hours.
#pragma once

#include <cstdint>

#include "hours/rules.hpp"
#include "loopwright/hours/setting.hpp"

namespace loopwright::hours {

/// A minute on the wall clock: days since the epoch, and minutes after midnight.
struct WallMinute {
  std::int64_t day = 0;
  int minute = 0;
};

/// The rule wipes out what those before it said of its days. Rules: it is one of them.
bool replaces(const Rules& rules, const Rule& rule);

/// Whatever year, date, week, weekday or holiday it is.
bool speaks_of_every_day(const Rule& rule);

/// Every minute of every day has the same answer, wherever it is.
bool is_constant(const Rules& rules);

Answer answer_at(const Rules& rules, const WallMinute& at, const Setting& setting);

/// The first minute after `at` at which there may be another answer; the next midnight at the latest.
WallMinute next_look(const Rules& rules, const WallMinute& at, const Setting& setting);

}  // namespace loopwright::hours
