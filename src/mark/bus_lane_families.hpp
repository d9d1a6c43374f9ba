// The three ways in which mappers write bus lanes, each read by itself; bus_lanes.cpp joins them.
//
// Rules: private to mark.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loopwright/mark/on_hours.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {

/// A road as the lane keys see it.
struct LaneRoad {
  const Tags& tags;
  const OneWay& one_way;
  Side side;
};

/// lanes:bus=1, lanes:psv:forward:conditional=1 @ (…)
std::vector<BusLaneFact> counted_bus_lanes(const LaneRoad& road);
/// bus:lanes=designated|yes with motor_vehicle:lanes=no|yes …
std::vector<BusLaneFact> listed_bus_lanes(const LaneRoad& road);
/// The tag by which a list lets cars into every lane of a direction at all hours; empty: none does.
std::string cars_in_every_lane(const LaneRoad& road, road::LaneDirection direction);
/// busway:left=lane, busway=opposite_lane …
std::vector<BusLaneFact> sided_bus_lanes(const LaneRoad& road);

/// "lanes:bus=1 says always, lanes:bus:conditional says Mo-Fr 07:00-10:00"
inline std::string always_but(const std::string& tag, const std::string& key,
                              const std::string& hours) {
  return tag + " says always, " + key + " says " + hours;
}

/// Of what is mapped but can't be read there is a lane, and nobody knows when: its hours stay out.
inline std::string not_readable(const std::string& tag) {
  return tag + " can't be read";
}

/// The heading of a lane in doubt in the report of a build, by what the doubt is.
std::string_view heading_of_doubt(const BusLaneFact& fact);

/// Direction of a key by its suffix: "", ":forward" or ":backward".
inline constexpr std::string_view lane_suffixes[] = {"", ":forward", ":backward"};
road::LaneDirection direction_of_suffix(std::string_view suffix, const OneWay& one_way);
/// True when lanes of this direction run against the traffic of a one-way road.
bool is_contraflow(road::LaneDirection direction, const OneWay& one_way);

}  // namespace loopwright::mark
