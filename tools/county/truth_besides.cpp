// What lies beside the roads: schools within 60 m, bus stops, car parks to practise in.
// MAP-TAGS 1.8; src/rules/kinds.txt.
#include <algorithm>

#include "county/truth_parts.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

using road::bit;
using road::Kind;
constexpr double school_m = 60, fence_m = 25, sure_m = 10;
constexpr double stop_m = 12;  // a pole from the middle of its road
constexpr int bays = 20;

bool is_school(const Tags& tags) {
  return says(tags, "amenity", {"school", "kindergarten"});
}

/// Metres from a closed outline to a line; both as drawn.
double distance(const std::vector<Spot>& outline, const std::vector<Spot>& line) {
  double least = 1e9;
  std::vector<Spot> closed = outline;
  closed.push_back(outline.front());
  for (const Spot p : line) least = std::min(least, nearest(closed, p).off_m);
  for (const Spot p : outline) least = std::min(least, nearest(line, p).off_m);
  return least;
}

Course course_of(const Road& road) {
  return road.two_way() ? Course::both : road.along ? Course::along : Course::against;
}

/// The road along its fence has it for certain; another within 60 m may.
void tell_school(const Net& net, const std::vector<Spot>& outline, Rows& rows) {
  std::vector<std::pair<double, const Road*>> near;
  for (const Road& road : net.roads()) {
    if (!road.learner || road.service() || road.ring || road.road_class == "motorway") continue;
    const double off = outline.size() == 1 ? nearest(road.line->points, outline.front()).off_m
                                           : distance(outline, road.line->points);
    if (off <= school_m + sure_m) near.emplace_back(off, &road);
  }
  std::ranges::sort(near);
  for (const auto& [off, road] : near) {
    const bool nearest_one =
        road == near.front().second && (near.size() == 1 || off + sure_m < near[1].first);
    if (nearest_one && off < fence_m && !road->link)
      rows.must_along(Kind::school, *road, course_of(*road), 0);
    else
      rows.may_along(bit(Kind::school), *road, course_of(*road));
  }
}

/// Where a yard or alley is as near as the street, the map doesn't tell whose stop it is.
void tell_stop(const Net& net, Spot at, Rows& rows) {
  double street = 1e9, other = 1e9;
  for (const Road& road : net.roads()) {
    const double off = nearest(road.line->points, at).off_m;
    const bool passed = road.learner && !road.service() && !road.ring && road.two_way();
    (passed ? street : other) = std::min(passed ? street : other, off);
  }
  if (street < stop_m && street + 2 < other)
    rows.must_at(Kind::bus_stop, at, 30);
  else
    rows.may_at(bit(Kind::bus_stop), at, 50);
}

void tell_car_park(const Area& area, Rows& rows) {
  const bool open = !area.tags.contains("access") ||
                    says(area.tags, "access", {"yes", "permissive", "customers", "public"});
  const bool surface = says(area.tags, "parking", {"surface"});
  const int capacity = read_int(value(area.tags, "capacity")).value_or(0);
  const Spot middle = spot((area.corners[0].x() + area.corners[area.corners.size() / 2].x()) / 2,
                           (area.corners[0].y() + area.corners[area.corners.size() / 2].y()) / 2);
  const double reach = apart(middle, area.corners[0]) + 150;
  if (!open || says(area.tags, "parking", {"multi-storey", "underground", "street_side", "lane"}))
    return;
  if (surface && capacity >= bays)
    rows.must_at(Kind::bay_park, middle, reach);
  else
    rows.may_at(bit(Kind::bay_park), middle, reach);
}

}  // namespace

void tell_besides(const Net& net, Rows& rows) {
  for (const Area& area : net.county().areas) {
    if (is_school(area.tags)) tell_school(net, area.corners, rows);
    if (says(area.tags, "amenity", {"parking"})) tell_car_park(area, rows);
  }
  for (const Lone& lone : net.county().lone) {
    if (is_school(lone.tags)) tell_school(net, {lone.at}, rows);
    if (says(lone.tags, "highway", {"bus_stop"})) tell_stop(net, lone.at, rows);
  }
  for (const Road& road : net.roads()) {
    const bool sign = std::ranges::any_of(
        road.line->points, [&](Spot p) { return says(net.tags(p), "hazard", {"school_zone"}); });
    if (sign || road.tag("hazard") == "school_zone")
      rows.may_along(bit(Kind::school), road, Course::both);
    for (const Spot p : road.line->points)
      if (says(net.tags(p), "highway", {"bus_stop"})) rows.may_at(bit(Kind::bus_stop), p, 30);
  }
}

}  // namespace loopwright::county
