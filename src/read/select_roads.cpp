// A way of a motor class is road, unless it is a driveway, an aisle or another service way that
// leads nowhere else. Private roads, those for access only and those unsuited to a lesson stay as
// road that is seen but not driven: they are arms of junctions, and the public ones exits that
// signs count.
#include "select_roads.hpp"

#include "loopwright/base/in_parts.hpp"

namespace loopwright::read {

std::vector<Road> select_roads(const mark::RawMap& raw, const BuildOptions& options,
                               road::Report& report) {
  std::vector<Road> roads;
  roads.reserve(raw.ways.size());
  const mark::BuiltWith with{options.motorways, options.fords};
  const auto read = [&](std::size_t row) {
    const mark::RawWay& way = raw.ways[row];
    const auto road_class = mark::road_class_of(way.tags);
    const bool is_road = road_class && !mark::is_minor_service(way.tags);
    return is_road ? Road{&way, *road_class, mark::car_access(way.tags, *road_class, with)}
                   : Road{};
  };
  each_in_order(raw.ways.size(), read, [&](std::size_t row, Road&& road) {
    if (road.way == nullptr) {
      if (mark::road_class_of(raw.ways[row].tags))
        report.count("ways left out: driveways, aisles and the like");
      return;
    }
    if (!road.access.who.empty()) report.count("roads for buses alone at all hours");
    roads.push_back(std::move(road));
  });
  report.count("roads", static_cast<std::int64_t>(roads.size()));
  return roads;
}

}  // namespace loopwright::read
