#include "county/grow_limit.hpp"

#include "county/grow_cut.hpp"
#include "county/grow_ground.hpp"

namespace loopwright::county {
namespace {

bool open_road(const Tags& tags) {
  const auto speed = tags.find("maxspeed");
  return speed == tags.end() || speed->second == "60 mph" || speed->second == "50 mph";
}

void put_limit(Line& line, const Tags& limits) {
  for (const char* key : {"maxspeed", "maxspeed:type", "lit"}) {
    line.tags.erase(key);
    if (const auto tag = limits.find(key); tag != limits.end()) line.tags.insert(*tag);
  }
}

}  // namespace

bool through(const Line& line) {
  const int importance = rank(line);
  return line.kind == LineKind::road && line.layer == 0 && importance >= 2 && importance <= 5 &&
         !line.tags.contains("dual_carriageway") && !line.tags.at("highway").ends_with("_link");
}

void limit_within(Drawing& county, const std::vector<Spot>& outline, Spot middle, double near_m,
                  const Tags& limits) {
  const std::size_t lines = county.lines.size();
  for (std::size_t n = 0; n < lines; ++n) {
    const Line& line = county.lines[n];
    if (!through(line) || !open_road(line.tags) || line.points.size() < 2) continue;
    if (nearest(line.points, middle).off_m >= near_m) continue;
    for (const std::size_t part : cut_at(county, n, outline)) {
      const std::vector<Spot>& points = county.lines[part].points;
      if (inside(outline, along(points, length_m(points) / 2)))
        put_limit(county.lines[part], limits);
    }
  }
}

}  // namespace loopwright::county
