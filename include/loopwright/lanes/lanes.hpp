// May we use the bus lane at the minute we'll be there?
//
//   for (const wish::BusLanePass& lane : bus_lanes_on(roads, loop, setting)) print(lane.why);
//
// Rules: the loop is resolved. The interval of passing runs from the low arrival at the lane's
// start to the high arrival at its end (passage.hpp). `usable` only when the map gives hours that don't
// touch the whole interval; hours missing, unreadable, hanging on what nobody can tell beforehand, or
// changing within it: "check the plate", with the reason in words. So it is
// when the map doesn't say in which direction the lane runs, or contradicts itself; a lane against
// the other traffic is never ours, so it counts as in force. A bus gate or bus-only street that is
// driven is a row as well; the search drives one only when it is settled usable.
// An unreadable plate means keep out. Source: DEVELOPERS.md (verdict on a bus lane).
#pragma once

#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::lanes {

struct Judgement {
  wish::Verdict verdict = wish::Verdict::check_the_plate;
  std::string why;  ///< a plain sentence: "in force from 16:00; you pass 15:41 to 15:47"
  std::optional<Instant> next_change = {};  ///< after the interval begins; empty: none is known
};

/// hours: when the lane is in force (as of hours::Timetable), empty when not mapped.
Judgement judge(std::string_view hours, const Passing& when, const hours::Setting& setting);

/// Every bus lane driven beside and bus gate driven through, in driving order; consecutive stretches
/// with one of which all is known alike are one.
std::vector<wish::BusLanePass> bus_lanes_on(const road::Roads& roads, const wish::Loop& loop,
                                            const hours::Setting& setting);

}  // namespace loopwright::lanes
