// 1. Grounds are areas: amenity of the kinds below, their lines closed; a car park beside or below a street (street
//    side, lay-by, underground …) is none. They are kept by the cells of the box round them.
// 2. A service road is looked at every few metres: what lies inside the same grounds is added up. Half of the road, or
//    30 m, and it belongs to them; less is a way in, or an outline drawn over the edge.
// The metres are ours. Sources: OSM wiki, pages Tag:highway=service ("access road to, or within"),
// Tag:amenity=school, Tag:amenity=parking, Tag:amenity=fuel.
#include "loopwright/mark/grounds.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include "box.hpp"
#include "loopwright/mark/rules.hpp"
#include "loopwright/road/roads.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

constexpr double belongs_m = 30, belongs_share = 0.5, look_each_m = 5;

bool is_grounds_kind(const Tags& tags) {
  constexpr std::array<std::string_view, 8> kinds{"school",      "kindergarten", "college",
                                                  "hospital",    "parking",      "fuel",
                                                  "bus_station", "fire_station"};
  constexpr std::array<std::string_view, 7> no_ground_of_their_own{
      "underground", "street_side", "lane", "layby", "on_kerb", "half_on_kerb", "shoulder"};
  return one_of(tags.get("amenity"), kinds) && !one_of(tags.get("parking"), no_ground_of_their_own);
}

/// Each end of a line is the end of another, or its own beginning. An outline that the extract cuts isn't, and has no
/// inside.
bool is_closed(const RawFeature& feature) {
  std::map<std::pair<std::int32_t, std::int32_t>, int> ends;
  for (const std::vector<Point>& line : feature.lines) {
    if (line.empty()) return false;
    for (const Point end : {line.front(), line.back()}) ++ends[{end.lat_e7, end.lon_e7}];
  }
  return !ends.empty() &&
         std::ranges::all_of(ends, [](const auto& end) { return end.second % 2 == 0; });
}

/// All cells of the grid that the box round a feature touches; none of one that is wider than any grounds are.
std::vector<std::uint64_t> cells_of_box(const RawFeature& feature) {
  constexpr std::int64_t step_e7 = 25'000;  // at most the side of a cell: none is stepped over
  // Half a degree, ours: a mapper moved one of its points over land and sea, and nobody knows what lies inside.
  constexpr std::int64_t widest_e7 = 5'000'000;
  Box box;
  for (const std::vector<Point>& line : feature.lines) box.take(line);
  if (box.north - box.south > widest_e7 || box.east - box.west > widest_e7) return {};
  std::vector<std::uint64_t> cells;
  for (std::int64_t lat = box.south; lat < box.north + step_e7; lat += step_e7)
    for (std::int64_t lon = box.west; lon < box.east + step_e7; lon += step_e7)
      cells.push_back(road::grid_cell({static_cast<std::int32_t>(std::min(lat, box.north)),
                                       static_cast<std::int32_t>(std::min(lon, box.east))}));
  std::ranges::sort(cells);
  cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
  return cells;
}

}  // namespace

Grounds::Grounds(const RawMap& raw) : raw_(raw) {
  for (const RawFeature& feature : raw.features) {
    if (!is_grounds_kind(feature.tags) || !is_closed(feature)) continue;
    for (const std::uint64_t cell : cells_of_box(feature)) at_[cell].push_back(&feature);
  }
}

std::vector<Point> Grounds::line_of(const RawWay& way) const {
  std::vector<Point> line;
  for (const std::int64_t node : way.nodes)
    if (const RawNode* known = raw_.find_node(node)) line.push_back(known->at);
  return line;
}

std::string Grounds::holding(const RawWay& way) const {
  if (at_.empty() || !way.tags.is("highway", "service")) return {};
  const std::vector<Point> line = line_of(way);
  const double whole_m = length_m(line);
  std::vector<std::pair<const RawFeature*, double>> inside_m;  // few
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double leg_m = distance_m(line[i - 1], line[i]);
    const auto looks = static_cast<int>(std::max(1.0, leg_m / look_each_m));
    for (int look = 0; look < looks; ++look) {
      const Point at = point_along(std::span(line).subspan(i - 1, 2), (look + 0.5) * leg_m / looks);
      const auto near = at_.find(road::grid_cell(at));
      if (near == at_.end()) continue;
      for (const RawFeature* feature : near->second) {
        if (!contains(*feature, at)) continue;
        auto known =
            std::ranges::find(inside_m, feature, &std::pair<const RawFeature*, double>::first);
        if (known == inside_m.end()) known = inside_m.insert(known, {feature, 0.0});
        known->second += leg_m / looks;
      }
    }
  }
  for (const auto& [feature, metres] : inside_m)
    if (metres >= std::min(belongs_m, belongs_share * whole_m))
      return "inside amenity=" + std::string(feature->tags.get("amenity"));
  return {};
}

}  // namespace loopwright::mark
