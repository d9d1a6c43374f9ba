// 1. Each row and each lane beside it is asked by itself: what all parts of an interval say, the whole
//    of it says.
// 2. An answer of hours for an interval is worked out once and kept.
#include "loopwright/lanes/lane_verdicts.hpp"

namespace loopwright::lanes {
namespace {

using road::LaneDirection;
using wish::Verdict;

bool runs_with(const road::BusLane& lane, StretchId driven) {
  if (lane.contraflow != 0) return false;
  return lane.direction == LaneDirection::unknown ||
         (lane.direction == LaneDirection::against) == driven.against();
}

/// All parts together; no value yet: none was asked.
void join(std::optional<Verdict>& all, Verdict part) {
  all = !all || *all == part ? part : Verdict::check_the_plate;
}

}  // namespace

Verdict LaneVerdicts::by_hours(TextId hours, const Passing& when) const {
  const auto [kept, is_new] = answers_.try_emplace({hours.value, when.from.unix_s, when.to.unix_s},
                                                   Verdict::check_the_plate);
  if (!is_new) return kept->second;
  const auto [read, made] = timetables_.try_emplace(hours.value, roads_.text(hours));
  const hours::Tri in_force =
      read->second.through(setting_.on_clock(when.from), setting_.on_clock(when.to), setting_)
          .in_force;
  if (in_force != hours::Tri::unknown)
    kept->second = in_force == hours::Tri::yes ? Verdict::in_force : Verdict::usable;
  return kept->second;
}

Verdict LaneVerdicts::of_lane(const road::BusLane& lane, const Passing& when) const {
  if (lane.direction == LaneDirection::unknown || roads_.text(lane.hours).empty())
    return Verdict::check_the_plate;
  const Verdict verdict = by_hours(lane.hours, when);
  const bool in_doubt = lane.doubtful != 0 && verdict == Verdict::usable;
  return in_doubt ? Verdict::check_the_plate : verdict;
}

Verdict LaneVerdicts::on(StretchId driven, const Passing& when) const {
  const Passing minutes = whole_minutes(when);
  std::optional<Verdict> all;
  for (const road::BusLane& lane : roads_.bus_lanes_of(driven.piece()))
    if (runs_with(lane, driven)) join(all, of_lane(lane, minutes));
  return all.value_or(Verdict::check_the_plate);
}

Verdict LaneVerdicts::on(const wish::Loop& loop, const Rows& rows, std::int64_t later_s) const {
  std::optional<Verdict> all;
  for (std::size_t i = rows.first; i <= rows.last; ++i) {
    const Passing when = passing_of(loop, {i, i}, setting_);
    join(all, on(loop.stretches[i].stretch,
                 {when.from.plus_seconds(later_s), when.to.plus_seconds(later_s)}));
  }
  return all.value_or(Verdict::check_the_plate);
}

}  // namespace loopwright::lanes
