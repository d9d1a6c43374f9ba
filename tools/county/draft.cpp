#include "county/draft.hpp"

#include <algorithm>
#include <cmath>

#include "county/joining.hpp"

namespace loopwright::county {
namespace {

/// Metres without the noughts behind the point.
std::string metres(long cm) {
  const long rest = std::labs(cm) % 100;
  std::string text = (cm < 0 ? "-" : "") + std::to_string(std::labs(cm) / 100);
  if (rest != 0)
    text += "." + std::to_string(rest / 10) + (rest % 10 ? std::to_string(rest % 10) : "");
  return text;
}

}  // namespace

void trouble(Draft& draft, int number, const std::string& why) {
  draft.county.troubles.push_back("line " + std::to_string(number) + ": " + why);
}

std::string called(const Line& line) {
  for (const char* key : {"name", "highway", "waterway", "railway"})
    if (const auto tag = line.tags.find(key); tag != line.tags.end()) return tag->second;
  return "a line";
}

std::string written(Spot place) {
  return metres(place.x_cm) + "," + metres(place.y_cm);
}

bool for_cars(LineKind kind) {
  return kind == LineKind::road || kind == LineKind::service || kind == LineKind::ring;
}

LineGrid grid_of_roads(const Drawing& county) {
  LineGrid grid;
  for (std::size_t i = 0; i < county.lines.size(); ++i)
    if (for_cars(county.lines[i].kind)) grid.put(i, county.lines[i].points);
  return grid;
}

std::optional<Spot> junction_near(const Drawing& county, const LineGrid& grid, Spot place) {
  std::map<Spot, int> roads_at;
  for (const std::size_t line : grid.near(place, join_m)) {
    std::vector<Spot> points = county.lines[line].points;
    std::ranges::sort(points);
    points.erase(std::unique(points.begin(), points.end()), points.end());
    for (const Spot point : points)
      if (apart(point, place) <= join_m) ++roads_at[point];
  }
  std::optional<Spot> best;
  for (const auto& [point, roads] : roads_at)
    if (roads > 1 && (!best || apart(point, place) < apart(*best, place))) best = point;
  return best;
}

}  // namespace loopwright::county
