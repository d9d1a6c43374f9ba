// Manoeuvres on the way: which of the spots that a drive goes by are stopped at, and for how long.
//
//   plan_stops(ground, drive);   // fills drive.stops
//
// Rules: only what the wish asks for is done, a want with a number never more often; never on the
// first or last stretch, which hold the door; one stop on one drive over a stretch.
#pragma once

#include <cstdint>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/find/passes.hpp"

namespace loopwright::find {

/// How long one stops for a kind; 0 for what is passed by driving.
std::int64_t stop_ms(road::Kind kind);

/// All manoeuvres of a drive. Planned stops aren't counted: their minutes are kept (wish/stops.hpp).
std::int64_t stops_ms(const road::Roads& roads, const Drive& drive);

/// Stops of both sorts on the rows before this one.
std::int64_t stops_before_ms(const road::Roads& roads, const Drive& drive, std::size_t row);

/// The wish asks for manoeuvres or for planned stops.
bool asks_for_stops(const wish::Wish& wish);

/// Manoeuvres first, then the planned stops, for which these make it later.
void plan_stops(const Ground& ground, Drive& drive);

/// Likely time at which each stretch of a drive begins to be driven, stops before it counted.
std::vector<std::int64_t> begin_times(const Ground& ground, const Drive& drive);

/// Likely time of the whole drive, manoeuvres and the minutes kept for planned stops counted.
std::int64_t away_ms(const Ground& ground, const Drive& drive);

/// Where the chance of a roadside kind or a manoeuvre lies: metres from where its stretch is entered.
double spot_m(const road::Roads& roads, const road::Chance& chance);

}  // namespace loopwright::find
