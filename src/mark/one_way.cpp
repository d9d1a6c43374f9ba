// Which ways traffic may take a road, whatever the car.
//
// 1. oneway:motorcar, oneway:motor_vehicle, oneway:vehicle, then oneway: the first one there counts
//    (oneway:bus=no and oneway:bicycle=no free no car).
// 2. yes, true, 1: along; -1, reverse: against; no, false, 0: both; alternating: both, in turns
//    under signals; reversible: neither, since nobody knows now which. An unknown word is taken as
//    "along" and reported with the piece: the strict reading.
// 3. Nothing said: a ring of junction=roundabout or circular and a motorway or its link is one-way.
//    oneway=no frees a link or a circular ring, but no roundabout and no motorway.
// Source: OSM wiki, pages Key:oneway, Tag:junction=roundabout.
#include <algorithm>
#include <array>

#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

struct Said {
  std::string_view value;
  std::string tag;
};

Said said_of(const Tags& tags) {
  constexpr std::array<std::string_view, 4> keys{"oneway:motorcar", "oneway:motor_vehicle",
                                                 "oneway:vehicle", "oneway"};
  for (const std::string_view key : keys) {
    if (const auto value = tags.get(key); !value.empty()) {
      return {value, tag_text(key, value)};
    }
  }
  return {};
}

/// The tag that makes a road one-way without oneway=*; empty when none does.
std::string implied_by(const Tags& tags, RoadClass road_class) {
  const std::string_view junction = tags.get("junction");
  if (junction == "roundabout" || junction == "circular")
    return "junction=" + std::string(junction);
  if (road_class == RoadClass::motorway) return "highway=motorway";
  if (road_class == RoadClass::motorway_link) return "highway=motorway_link";
  return {};
}

}  // namespace

OneWay one_way_of(const Tags& tags, RoadClass road_class) {
  const Said said = said_of(tags);
  const std::string implied = implied_by(tags, road_class);
  const bool firm = tags.is("junction", "roundabout") || road_class == RoadClass::motorway;
  constexpr std::array<std::string_view, 3> both{"no", "false", "0"};
  const bool says_both = one_of(said.value, both);
  if (said.value.empty() || (says_both && firm))
    return {true, implied.empty(), !implied.empty(), implied};
  if (says_both) return {true, true, false, said.tag};
  if (said.value == "alternating") return {true, true, false, said.tag};
  if (said.value == "reversible") return {false, false, true, said.tag};
  if (said.value == "-1" || said.value == "reverse") return {false, true, true, said.tag};
  return {true, false, true, said.tag};
}

}  // namespace loopwright::mark
