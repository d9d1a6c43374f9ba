// What on the road has hours, by the name an instructor gives it, and what to read on its sign.
//
//   name(thing_of(lane)) == "bus gate";   name(thing_of(road::Timed::limit)) == "speed limit"
//
// Why here: the lists of `lanes`, the day table and the route card must call a thing alike.
#pragma once

#include <cstdint>
#include <string_view>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::lanes {

enum class Thing : std::uint8_t {
  bus_lane,
  contraflow_lane,  ///< a bus lane that runs against the other traffic
  bus_gate,         ///< a short piece of road that only buses and some others may drive through
  bus_only_street,  ///< a longer one
  street,           ///< shut to cars at some hours
  turn,             ///< forbidden at some hours
  limit             ///< another limit at some hours
};
/// "bus lane", "contraflow bus lane", "bus gate", "bus-only street", "street", "turn", "speed limit"
std::string_view name(Thing thing);

/// Of what a pass calls itself (wish::BusLanePass::what).
Thing thing_of(const wish::BusLanePass& lane);
/// Of a rule; one about a gate is a bus gate or a bus-only street by its length in metres. The line
/// of 100 m between them is ours: the law knows one sign for both.
Thing thing_of(road::Timed about, double length_m = 0);

/// What to look for there: "the days and hours on the plate; no times means at all times".
/// Source: CHECKED.md A4 of the project's design notes (a sign without times means at all times).
std::string_view sign_words(Thing thing);

}  // namespace loopwright::lanes
