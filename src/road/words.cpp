// Method: tables indexed by the enums.
#include <array>

#include "loopwright/road/roads.hpp"

namespace loopwright::road {
namespace {

/// OSM's own words, as in highway=…
constexpr std::array<std::string_view, 15> class_names{
    "motorway",     "trunk",        "primary",        "secondary",     "tertiary",
    "unclassified", "residential",  "living_street",  "service",       "motorway_link",
    "trunk_link",   "primary_link", "secondary_link", "tertiary_link", "road"};

constexpr std::array<int, 15> class_ranks{0, 1, 2, 3, 4, 5, 5, 6, 7, 0, 1, 2, 3, 4, 5};

constexpr std::array<std::string_view, control_count> control_names{"none",
                                                                    "priority",
                                                                    "across",
                                                                    "give-way-near",
                                                                    "give-way-far",
                                                                    "stop-near",
                                                                    "stop-far",
                                                                    "signals",
                                                                    "signal-crossing",
                                                                    "zebra",
                                                                    "mini-roundabout",
                                                                    "roundabout",
                                                                    "multi-lane-roundabout",
                                                                    "signal-roundabout",
                                                                    "level-crossing",
                                                                    "turn-round",
                                                                    "barrier"};

constexpr std::array<std::string_view, 13> landmark_names{
    "church",      "mosque", "synagogue", "temple",   "pub",          "school", "petrol-station",
    "supermarket", "shop",   "station",   "hospital", "fire-station", "library"};

}  // namespace

std::string_view name(LandmarkKind kind) {
  return landmark_names.at(static_cast<std::size_t>(kind));
}

std::string_view name(RoadClass road_class) {
  return class_names.at(static_cast<std::size_t>(road_class));
}

int rank(RoadClass road_class) {
  return class_ranks.at(static_cast<std::size_t>(road_class));
}

std::string_view name(Control control) {
  return control_names.at(static_cast<std::size_t>(control));
}

}  // namespace loopwright::road
