#include "loopwright/lanes/thing.hpp"

#include <array>

namespace loopwright::lanes {
namespace {

constexpr double longest_gate_m = 100;  // ours: what a driver sees the end of as they come to it

constexpr std::array<std::string_view, 7> names{
    "bus lane", "contraflow bus lane", "bus gate", "bus-only street", "street",
    "turn",     "speed limit"};

}  // namespace

std::string_view name(Thing thing) {
  return names[static_cast<std::size_t>(thing)];
}

Thing thing_of(const wish::BusLanePass& lane) {
  for (const Thing thing : {Thing::contraflow_lane, Thing::bus_gate, Thing::bus_only_street})
    if (lane.what == name(thing)) return thing;
  return Thing::bus_lane;
}

Thing thing_of(road::Timed about, double length_m) {
  if (about == road::Timed::limit) return Thing::limit;
  if (about == road::Timed::access) return Thing::street;
  return length_m > longest_gate_m ? Thing::bus_only_street : Thing::bus_gate;
}

std::string_view sign_words(Thing thing) {
  switch (thing) {
    case Thing::bus_lane:
      return "the days and hours on the plate; no times means at all times";
    case Thing::contraflow_lane:
      return "nothing: it is for buses that come towards you";
    case Thing::bus_gate:
    case Thing::bus_only_street:
      return "who is let through, the days and the hours; no times means at all times";
    case Thing::street:
      return "the days and hours on the sign at each end; no times means at all times";
    case Thing::turn:
      return "the days and hours on the plate below the sign for the turn";
    case Thing::limit:
      break;
  }
  return "the number on the signs, and any hours or flashing lights below it";
}

}  // namespace loopwright::lanes
