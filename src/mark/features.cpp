// Which things beside the roads are kept, and where they lie.
//
// 1. Kept for what they are: bus stops, taxi ranks, schools, car parks and their bays, fire and
//    ambulance stations, hospitals, gates and entrances (of schools), hazards and school zones,
//    addresses; churches, pubs and petrol stations, which show a corner without a name too.
// 2. Kept for their name, because people go there or steer by them: settlements, and amenities,
//    shops, sights, stations, offices, parks and buildings that have a name.
// 3. Inside: a ray to the east crosses the lines an odd number of times (no order of the lines is
//    needed, so an outline cut into several ways will do).
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "loopwright/mark/feature_keys.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

bool is_kept_without_name(const Tags& tags) {
  constexpr std::array<std::string_view, 12> amenities{
      "school", "kindergarten", "college",      "parking",  "parking_space",    "taxi",
      "pub",    "bus_station",  "fire_station", "hospital", "place_of_worship", "fuel"};
  return tags.is("highway", "bus_stop") || one_of(tags.get("amenity"), amenities) ||
         (tags.is("public_transport", "platform") && tags.is("bus", "yes")) ||
         tags.is("highway", "speed_camera") || tags.has("hazard") || tags.has("entrance") ||
         tags.is("emergency", "ambulance_station") || tags.is("barrier", "gate") ||
         tags.has("addr:housenumber") || tags.has("addr:housename");
}

bool is_kept_for_name(const Tags& tags) {
  constexpr std::array<std::string_view, 11> keys{
      "place",  "amenity",  "shop",     "tourism", "historic",        "leisure",
      "office", "building", "man_made", "landuse", "public_transport"};
  if (!tags.has("name")) return false;
  return std::ranges::any_of(keys, [&](std::string_view key) { return tags.has(key); }) ||
         tags.is("railway", "station") || tags.is("railway", "halt");
}

bool crosses(Point from, Point to, Point point) {
  if ((from.lat_e7 > point.lat_e7) == (to.lat_e7 > point.lat_e7)) return false;
  const double share = (static_cast<double>(point.lat_e7) - from.lat_e7) /
                       (static_cast<double>(to.lat_e7) - from.lat_e7);
  return point.lon_e7 < from.lon_e7 + share * (static_cast<double>(to.lon_e7) - from.lon_e7);
}

}  // namespace

bool is_feature_key(std::string_view key) {
  constexpr std::array<std::string_view, 10> keys{
      "name",     "amenity", "addr:housenumber", "addr:housename", "hazard",
      "entrance", "highway", "barrier",          "emergency",      "public_transport"};
  return one_of(key, keys);
}

bool is_feature(const Tags& tags) {
  return is_kept_without_name(tags) || is_kept_for_name(tags);
}

bool contains(const RawFeature& feature, Point point) {
  bool inside = false;
  for (const std::vector<Point>& line : feature.lines) {
    for (std::size_t i = 1; i < line.size(); ++i) {
      if (crosses(line[i - 1], line[i], point)) inside = !inside;
    }
  }
  return inside;
}

double distance_m(const RawFeature& feature, Point point) {
  if (feature.lines.empty()) return loopwright::distance_m(feature.at, point);
  double nearest = std::numeric_limits<double>::infinity();
  for (const std::vector<Point>& line : feature.lines) {
    nearest = std::min(nearest, nearest_on_line(line, point).off_m);
  }
  return nearest;
}

}  // namespace loopwright::mark
