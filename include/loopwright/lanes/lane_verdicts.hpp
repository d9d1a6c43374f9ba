// One verdict on the bus lanes beside a drive, for whoever asks many drives for it.
//
//   LaneVerdicts verdicts(roads, setting);
//   verdicts.on(loop, {pass.first, pass.last}) == wish::Verdict::usable;
//
// Rules: of the lanes that run with who drives there, as bus_lanes_on judges each of them; lanes against
// the other traffic and bus gates aren't asked. `usable` or `in_force` only when every lane is, all through
// the time one is beside it; else "check the plate", so it is where there is no lane. The loop is
// resolved. Scratch for one thread: answers are kept; the roads and the setting outlive it.
// Why: a search asks of thousands of drives and needs no sentences.
#pragma once

#include <cstdint>
#include <map>
#include <tuple>
#include <unordered_map>

#include "loopwright/hours/setting.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::lanes {

class LaneVerdicts {
 public:
  LaneVerdicts(const road::Roads& roads, const hours::Setting& setting)
      : roads_(roads), setting_(setting) {}

  /// Along the rows of a drive, each at its own interval of passing, all of them `later_s` seconds later
  /// (earlier when below nought).
  [[nodiscard]] wish::Verdict on(const wish::Loop& loop, const Rows& rows,
                                 std::int64_t later_s = 0) const;
  /// Beside one stretch, all through an interval, which is widened to whole minutes.
  [[nodiscard]] wish::Verdict on(StretchId driven, const Passing& when) const;
  /// Of one lane all through an interval, for who drives as its buses do; a lane against the other traffic isn't asked.
  [[nodiscard]] wish::Verdict of_lane(const road::BusLane& lane, const Passing& when) const;

 private:
  [[nodiscard]] wish::Verdict by_hours(TextId hours, const Passing& when) const;

  const road::Roads& roads_;
  const hours::Setting& setting_;
  mutable std::unordered_map<std::uint32_t, hours::Timetable> timetables_;  // by text
  mutable std::map<std::tuple<std::uint32_t, std::int64_t, std::int64_t>, wish::Verdict> answers_;
};

}  // namespace loopwright::lanes
