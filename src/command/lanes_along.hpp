// The instructor's own route for the command `lanes`: from places to a drive.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "command/lanes_beside.hpp"

namespace loopwright::command {

/// The places of a route as a wish, its start and level still open. Rules: at least two.
wish::Wish wish_through(std::span<const NamedPlace> places);

/// Throws UsageError, by the words it was typed with, when a place is far from any road.
void need_roads_at(const road::Roads& roads, std::span<const NamedPlace> places);

/// Why there is no such drive, its places called as they were typed: the search speaks of home, point 1
/// and the end, since it knows no more of them.
std::string with_names(const std::string& why, std::span<const NamedPlace> places);

/// A drive for a start close to the wish's, when the wish itself has none: the least shift first, to
/// the minute.
struct OtherStart {
  int minutes = 0;  ///< later; negative: earlier
  wish::Loop loop;
};
std::optional<OtherStart> other_start(const TimedRoads& timed, const wish::Wish& wish);

/// A drive at any hour of a day, that of the wish's start first; empty when there is none at all.
std::optional<wish::Loop> drive_on_day(const TimedRoads& timed, wish::Wish wish, const Date& day);

}  // namespace loopwright::command
