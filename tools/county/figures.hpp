// The figures of a map that say whether it is built like a real one, counted from the raw extract.
//
//   print_comparison(std::cout, figures_of(read_road_map("a.osm.pbf", {})), figures_of(b), {});
//
// Rules: counts come straight from tags and node lists; nothing here is taken from rooms read or
// mark, so that a mistake there doesn't hide itself. Service roads are counted apart: maps differ
// most in how many driveways somebody drew.
#pragma once

#include <cstdint>
#include <filesystem>
#include <iosfwd>
#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "loopwright/base/point.hpp"

namespace loopwright::county {

/// Degrees that a way must lie in with all its points.
struct Box {
  double south = -90, west = -180, north = 90, east = 180;
  [[nodiscard]] bool holds(double lat, double lon) const {
    return lat >= south && lat <= north && lon >= west && lon <= east;
  }
};
/// "51.51,-3.09,51.60,-2.91" as south, west, north, east; empty when it isn't that.
std::optional<Box> read_box(std::string_view text);

/// What stands at a node that a driver deals with.
struct MapNode {
  Point at;
  bool known = false;  ///< the extract holds it
  bool mini = false, level_crossing = false, zebra = false, signal_crossing = false;
  bool signals = false, calming = false;
};

/// A way for cars.
struct MapWay {
  std::int64_t id = 0;
  std::string road_class;  ///< the value of highway, a link as its road
  std::vector<std::int64_t> nodes;
  bool one_way = false, ring = false;
  bool limit = false, lit = false, width = false, name = false;  ///< these tags are mapped
  [[nodiscard]] bool service() const { return road_class == "service"; }
};

struct RoadMap {
  std::vector<MapWay> ways;
  std::unordered_map<std::int64_t, MapNode> nodes;  ///< those of the ways
  std::size_t turn_bans = 0;                        ///< restrictions that begin on one of the ways
  std::size_t left_out = 0;  ///< ways that leave the box or whose points are missing
};
/// Throws InputError when the file can't be read.
RoadMap read_road_map(const std::filesystem::path& file, const Box& box);

/// One line of the table.
struct Figure {
  std::string name;
  double value = 0;
  int decimals = 1;
  std::optional<std::size_t> count;  ///< so many were counted, where the value is a share of them
};
/// Always the same figures in the same order, whatever the map holds.
std::vector<Figure> figures_of(const RoadMap& map);

/// By name of figure: why it may differ by more than a factor of two.
using Reasons = std::map<std::string, std::string>;
/// Lines "figure | reason". Throws InputError for a line of another form.
Reasons read_reasons(std::string_view text);

/// True when neither is more than twice the other; two zeros are alike.
bool alike(const Figure& a, const Figure& b);

/// The table; returns how many figures differ by more than a factor of two and have no reason.
/// Rules: a and b come from figures_of.
std::size_t print_comparison(std::ostream& out, const std::vector<Figure>& a,
                             const std::vector<Figure>& b, const Reasons& reasons);

}  // namespace loopwright::county
