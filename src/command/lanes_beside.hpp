// Places of the instructor's own route that lie on a street which the clock shuts then.
//
//   if (found.loops.empty()) found = drive_beside_shut_streets(out, {roads, setting}, wish, places);
#pragma once

#include <iosfwd>
#include <span>

#include "command/shut_notes.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::command {

/// The roads of a lesson, and what their hours are read by. Rules: both outlive it.
struct TimedRoads {
  const road::Roads& roads;
  const hours::Setting& setting;
};

/// The drive of a wish with its places moved off shut streets, each onto a street within a few metres
/// that has no hours: the nearest ones from which the whole route can be driven. Tells of each that is
/// moved; the wish has them then. When no such streets give a drive it stays as it was, and the streets
/// that are shut are told.
/// Rules: `places` are those of the wish in order, by the words they were typed with.
find::FindResult drive_beside_shut_streets(std::ostream& out, const TimedRoads& timed,
                                           wish::Wish& wish, std::span<const NamedPlace> places);

}  // namespace loopwright::command
