// May we use the bus lane at the minute we'll be there?
//
//   for (const wish::BusLanePass& lane : bus_lanes_on(roads, loop)) print(lane.why);
//
// Rules: the loop is resolved. The interval of passing runs from the low arrival at the lane's
// start to the high arrival at its end. `usable` only when the map gives hours that don't touch
// the whole interval; hours missing, unreadable or changing within it: "check the plate". So it is
// when the map doesn't say in which direction the lane runs, or contradicts itself; a lane against
// the other traffic is never ours, so it counts as in force.
// An unreadable plate means keep out. Source: DEVELOPERS.md (verdict on a bus lane).
#pragma once

#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::lanes {

struct Judgement {
  wish::Verdict verdict = wish::Verdict::check_the_plate;
  std::string why;  ///< a plain sentence: "in force from 16:00; you pass 15:41 to 15:47"
};

/// hours: opening-hours text of when the lane is in force, empty when not mapped.
Judgement judge(std::string_view hours, const Instant& from, const Instant& to);

/// Every bus lane driven beside, in driving order; consecutive stretches with the same hours and
/// side are one lane.
std::vector<wish::BusLanePass> bus_lanes_on(const road::Roads& roads, const wish::Loop& loop);

}  // namespace loopwright::lanes
