// A way of a motor class is road, unless it is a driveway, an aisle or another service way that
// leads nowhere else. Private roads, those for access only and those unsuited to a lesson stay as
// road that is seen but not driven: they are arms of junctions, and the public ones exits that
// signs count.
#include "select_roads.hpp"

namespace loopwright::read {

std::vector<Road> select_roads(const mark::RawMap& raw, const BuildOptions& options,
                               road::Report& report) {
  std::vector<Road> roads;
  roads.reserve(raw.ways.size());
  const mark::BuiltWith with{options.motorways, options.fords};
  for (const mark::RawWay& way : raw.ways) {
    const auto road_class = mark::road_class_of(way.tags);
    if (!road_class) continue;
    if (mark::is_minor_service(way.tags)) {
      report.count("ways left out: driveways, aisles and the like");
    } else {
      roads.push_back({&way, *road_class, mark::car_access(way.tags, *road_class, with)});
      if (!roads.back().access.who.empty()) report.count("roads for buses alone at all hours");
    }
  }
  report.count("roads", static_cast<std::int64_t>(roads.size()));
  return roads;
}

}  // namespace loopwright::read
