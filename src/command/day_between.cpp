#include "command/day_between.hpp"

#include <cmath>

#include "loopwright/find/find.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::command {
namespace {

constexpr int experienced = 5;  // the instructor drives

std::optional<int> drive_minutes(Ground& ground, Point from, Point to, const Instant& start) {
  wish::Wish wish;
  wish.home = from;
  wish.end = to;
  wish.start = start;
  wish.level = experienced;
  wish.terms = ground.terms();
  const hours::Setting setting = ground.setting_of(wish);
  const road::Roads& roads = ground.for_lesson(wish::lesson_time(wish, setting));
  const find::FindResult way = find::route_through(roads, wish, setting);
  if (way.loops.empty()) return std::nullopt;
  return static_cast<int>(std::ceil(way.loops.front().seconds.likely / 60));
}

}  // namespace

Instant over_after(const Ground& ground, const Instant& start, int minutes) {
  return hours::with_offset_of(ground.info().zone, start.unix_s + std::int64_t{60} * minutes);
}

int minutes_between(const DayVisit& first, const DayVisit& second) {
  const auto seconds = static_cast<double>(second.start.unix_s - first.over.unix_s);
  return static_cast<int>(std::floor(seconds / 60));
}

std::vector<DayGap> gaps_of(Ground& ground, const std::vector<DayVisit>& visits) {
  std::vector<DayGap> gaps;
  for (std::size_t k = 0; k + 1 < visits.size(); ++k) {
    const DayVisit &now = visits[k], &next = visits[k + 1];
    DayGap gap{minutes_between(now, next), 0};
    if (!now.end || !next.begin)
      gap.drive_minutes = std::nullopt;
    else if (gap.free_minutes >= 0 && !(*now.end == *next.begin))
      gap.drive_minutes = drive_minutes(ground, *now.end, *next.begin, now.over);
    gaps.push_back(gap);
  }
  return gaps;
}

std::vector<std::string> clashes_of(const std::vector<DayVisit>& visits,
                                    const std::vector<DayGap>& gaps, Date day) {
  std::vector<std::string> clashes;
  for (std::size_t k = 0; k < gaps.size(); ++k)
    for (std::size_t later = k + 1; later < visits.size(); ++later) {
      const DayVisit &first = visits[k], &second = visits[later];
      const DayGap gap = later == k + 1 ? gaps[k] : DayGap{minutes_between(first, second), 0};
      const bool on_the_day = first.start.civil().date == day || second.start.civil().date == day;
      if (on_the_day && gap.is_clash()) clashes.push_back(clash_words(first, second, gap));
    }
  return clashes;
}

std::string clash_words(const DayVisit& before, const DayVisit& after, const DayGap& gap) {
  const std::string both = before.code + " " + write_clock(before.start) + " to " +
                           write_clock(before.over) + ", " + after.code + " " +
                           write_clock(after.start) + ": ";
  if (gap.free_minutes < 0)
    return both + "they overlap by " + std::to_string(-gap.free_minutes) + " min";
  return both + std::to_string(gap.free_minutes) + " min between them, and the drive takes " +
         std::to_string(gap.drive_minutes.value_or(0));
}

}  // namespace loopwright::command
