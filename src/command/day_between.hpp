// From one lesson of a day to the next: the minutes that are free, and those the instructor drives.
#pragma once

#include <string>
#include <vector>

#include "command/day_list.hpp"
#include "command/ground.hpp"
#include "loopwright/base/point.hpp"

namespace loopwright::command {

/// A gap between two lessons.
struct DayGap {
  int free_minutes = 0;   ///< from the end of one to the start of the next; negative: they overlap
  int drive_minutes = 0;  ///< likely, of an experienced driver; -1: no way was found
  [[nodiscard]] bool is_clash() const { return free_minutes < 0 || drive_minutes > free_minutes; }
};

/// One gap fewer than lessons. doors: of the lessons, in their order.
std::vector<DayGap> gaps_of(Ground& ground, const std::vector<DayLine>& lines,
                            const std::vector<Point>& doors);

/// "WREN 09:00 to 10:30, FINCH 10:15: they overlap by 15 min"
std::string clash_words(const DayLine& before, const DayLine& after, const DayGap& gap);

}  // namespace loopwright::command
