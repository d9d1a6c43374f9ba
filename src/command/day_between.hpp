// From one lesson of a day to the next: the minutes that are free, and those the instructor drives.
//
// Why instants: in the night in which the clocks change, the wall clock isn't the time that passes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "command/ground.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/base/point.hpp"

namespace loopwright::command {

/// A lesson as far as the way to the next one is concerned.
struct DayVisit {
  Instant start;
  Instant over;  ///< when it ends, not before its start
  std::string code;
  std::optional<Point> begin, end;  ///< where the instructor must be; none: not known
};

/// The moment so many minutes after a start, as the area's clocks show it then.
Instant over_after(const Ground& ground, const Instant& start, int minutes);

/// A gap between two lessons.
struct DayGap {
  int free_minutes = 0;  ///< from the end of one to the start of the next; negative: they overlap
  /// Likely, of an experienced driver; none: no way was found, or its ends aren't known.
  std::optional<int> drive_minutes = 0;
  [[nodiscard]] bool is_clash() const {
    return free_minutes < 0 || drive_minutes.value_or(0) > free_minutes;
  }
};

/// Whole minutes from the end of one to the start of another, of time that passes; negative: they overlap.
int minutes_between(const DayVisit& first, const DayVisit& second);

/// One gap fewer than lessons. visits: in order of their starts.
std::vector<DayGap> gaps_of(Ground& ground, const std::vector<DayVisit>& visits);

/// What overlaps, also over lessons that lie between, and where the drive to the next one takes longer than there is; in words. gaps:
/// of these visits. Two of which neither begins on the day are no concern of it.
std::vector<std::string> clashes_of(const std::vector<DayVisit>& visits,
                                    const std::vector<DayGap>& gaps, Date day);

/// "WREN 09:00 to 10:30, FINCH 10:15: they overlap by 15 min"
std::string clash_words(const DayVisit& before, const DayVisit& after, const DayGap& gap);

}  // namespace loopwright::command
