// When a lesson is on the road, for what depends on the hour.
//
// Rules: of the wish alone, so that the search, the card and the proof mean the same hours.
// Why: an own drive through points says no minutes; three hours hold any lesson that is driven.
#pragma once

#include "loopwright/road/note.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

inline constexpr int own_drive_minutes = 180;

inline road::LessonTime lesson_time(const Wish& wish, const hours::Setting& setting) {
  return road::lesson_time(wish.start, wish.minutes.value_or(own_drive_minutes), setting);
}

}  // namespace loopwright::wish
