// A way of a motor class is road, unless it is a driveway, an aisle or another service way that
// leads nowhere else. Private roads, those for access only and those unsuited to a lesson stay as
// road that is seen but not driven: they are arms of junctions, and the public ones exits that
// signs count. A service road inside a school's, a car park's or such grounds is as good as private.
#include "select_roads.hpp"

#include <utility>

#include "loopwright/base/in_parts.hpp"
#include "loopwright/mark/grounds.hpp"

namespace loopwright::read {
namespace {

mark::CarAccess access_of(const mark::RawWay& way, road::RoadClass road_class, mark::BuiltWith with,
                          const mark::Grounds& grounds) {
  mark::CarAccess access = mark::car_access(way.tags, road_class, with);
  if (access.along == mark::Access::no && access.against == mark::Access::no) return access;
  std::string inside = grounds.holding(way);
  if (inside.empty()) return access;
  mark::CarAccess shut;
  shut.along = shut.against = mark::Access::no;
  shut.tag = std::move(inside);
  return shut;
}

}  // namespace

std::vector<Road> select_roads(const mark::RawMap& raw, const BuildOptions& options,
                               road::Report& report) {
  std::vector<Road> roads;
  roads.reserve(raw.ways.size());
  const mark::BuiltWith with{options.motorways, options.fords};
  const mark::Grounds grounds(raw);
  const auto read = [&](std::size_t row) {
    const mark::RawWay& way = raw.ways[row];
    const auto road_class = mark::road_class_of(way.tags);
    const bool is_road = road_class && !mark::is_minor_service(way.tags);
    return is_road ? Road{&way, *road_class, access_of(way, *road_class, with, grounds)} : Road{};
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
