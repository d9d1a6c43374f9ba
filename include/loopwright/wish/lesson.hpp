// When a lesson is on the road, for what depends on the hour and for what is told of its times.
//
// Rules: of the wish alone, so that the search, the card and the proof mean the same hours.
// Why: an own drive through points says no minutes; three hours hold any lesson that is driven.
#pragma once

#include <cmath>

#include "loopwright/road/note.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

inline constexpr int own_drive_minutes = 180;

/// What a shut level crossing may add each time, beside the times of a loop, not in them. Common practice, no
/// source.
inline constexpr int shut_crossing_minutes = 4;

/// For how long a lesson of so many likely minutes may be on the road: a tenth and two more hold the
/// nine drives in ten (ours: pace's high times of whole lessons stay within).
constexpr int slow_minutes(int minutes) {
  return minutes + (minutes + 9) / 10 + 2;
}

inline road::LessonTime lesson_time(const Wish& wish, const hours::Setting& setting) {
  return road::lesson_time(wish.start, slow_minutes(wish.minutes.value_or(own_drive_minutes)),
                           setting);
}

/// The moment so many seconds after a loop begins, as the clock on the wall shows it then: when the
/// clocks are changed on the way, by the new time.
inline Instant clock_after(const Loop& loop, double seconds, const hours::Setting& setting) {
  return setting.on_clock(loop.start.plus_seconds(std::llround(seconds)));
}

/// When a loop is likely to be over, its stops counted.
inline Instant likely_end(const Loop& loop, const hours::Setting& setting) {
  return clock_after(loop, loop.seconds.likely + loop.stop_seconds, setting);
}

}  // namespace loopwright::wish
