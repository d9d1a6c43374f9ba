#include "county/truth_net.hpp"

#include <algorithm>
#include <cmath>

#include "county/map_numbers.hpp"

namespace loopwright::county {
namespace {

constexpr double heading_m = 15;

bool is_ring(const Tags& tags) {
  return says(tags, "junction", {"roundabout", "circular"});
}

/// MAP-TAGS 1.7: motorcar, motor_vehicle, vehicle, access; the first key there decides.
bool cars_may(const Tags& tags) {
  for (const char* key : {"motorcar", "motor_vehicle", "vehicle", "access"}) {
    if (value(tags, key).empty()) continue;
    return says(tags, key, {"yes", "designated", "permissive"});
  }
  return true;
}

bool suits_a_lesson(const Tags& tags, const std::string& road_class) {
  if (road_class == "living_street") return false;
  const bool rough =
      says(tags, "surface", {"gravel", "unpaved", "dirt", "mud", "grass", "ground"}) ||
      says(tags, "smoothness", {"bad", "very_bad", "horrible", "impassable"});
  const bool shut = says(tags, "toll", {"yes"}) || says(tags, "ford", {"yes"}) ||
                    says(tags, "oneway", {"reversible"});
  return cars_may(tags) && !rough && !shut;
}

void set_directions(Road& road) {
  const Tags& tags = road.line->tags;
  const bool implied = road.ring || value(tags, "highway") == "motorway";
  if (says(tags, "oneway", {"-1", "reverse"})) {
    road.along = false;
  } else if (says(tags, "oneway", {"yes", "1", "true"}) ||
             (implied && !says(tags, "oneway", {"no", "0", "false"}))) {
    road.against = false;
  }
}

std::optional<Road> road_of(const Line& line, std::int64_t way) {
  std::string highway = value(line.tags, "highway");
  const bool for_cars =
      line.kind == LineKind::road || line.kind == LineKind::service || line.kind == LineKind::ring;
  if (!for_cars || highway.empty() || line.points.size() < 2) return {};
  if (says(line.tags, "highway", {"track", "footway", "path", "cycleway", "pedestrian", "steps"}))
    return {};
  Road road;
  road.line = &line;
  road.way = way;
  road.link = highway.ends_with("_link");
  road.road_class = road.link ? highway.substr(0, highway.size() - 5) : highway;
  road.ring = is_ring(line.tags);
  road.minor = says(line.tags, "service",
                    {"driveway", "parking_aisle", "drive-through", "emergency_access"});
  road.length = length_m(line.points);
  set_directions(road);
  road.learner = !road.minor && suits_a_lesson(line.tags, road.road_class);
  return road;
}

}  // namespace

const std::string& value(const Tags& tags, const std::string& key) {
  static const std::string none;
  const auto found = tags.find(key);
  return found == tags.end() ? none : found->second;
}

bool says(const Tags& tags, const std::string& key, std::initializer_list<const char*> values) {
  const std::string& text = value(tags, key);
  return std::ranges::any_of(values, [&](const char* word) { return text == word; });
}

Net::Net(const Drawing& county) : county_(county), flat_(county.origin_lat, county.origin_lon) {
  for (std::size_t i = 0; i < county.lines.size(); ++i) {
    const auto way = map_ids::first_way + static_cast<std::int64_t>(i);
    if (std::optional<Road> road = road_of(county.lines[i], way)) {
      roads_.push_back(std::move(*road));
      add_arms(roads_.size() - 1);
    }
  }
  std::erase_if(points_, [&](Spot place) {
    const std::vector<Arm>& here = arms_.at(place);
    return here.size() == 2 && here[0].road == here[1].road && here[0].at == here[1].at;
  });
  for (const Relation& relation : county.relations) {
    for (const Member& member : relation.members) {
      if (member.role != "via") continue;
      if (const auto* line = std::get_if<std::size_t>(&member.what)) {
        bans_.insert(county.lines[*line].points.front());
        bans_.insert(county.lines[*line].points.back());
      } else {
        bans_.insert(std::get<Spot>(member.what));
      }
    }
  }
}

void Net::add_arms(std::size_t road) {
  const std::vector<Spot>& line = roads_[road].line->points;
  for (std::size_t i = 0; i < line.size(); ++i) {
    std::vector<Arm>& here = arms_[line[i]];
    if (here.empty()) points_.push_back(line[i]);
    if (i > 0) here.push_back({road, i, -1});
    if (i + 1 < line.size()) here.push_back({road, i, +1});
  }
}

const std::vector<Arm>& Net::arms(Spot place) const {
  static const std::vector<Arm> none;
  const auto found = arms_.find(place);
  return found == arms_.end() ? none : found->second;
}

Spot Net::ahead(const Arm& arm, double metres) const {
  const std::vector<Spot>& line = road(arm).line->points;
  std::size_t at = arm.at;
  for (;;) {
    const std::size_t next = at + static_cast<std::size_t>(arm.step);  // wraps: no such point
    if (next >= line.size()) return line[at];
    const double step = apart(line[at], line[next]);
    if (step >= metres) return step > 0 ? towards(line[at], line[next], metres) : line[next];
    metres -= step;
    at = next;
  }
}

double Net::heading(const Arm& arm) const {
  return angle_of(road(arm).line->points[arm.at], ahead(arm, heading_m));
}

const Tags& Net::tags(Spot place) const {
  static const Tags none;
  const auto found = county_.node_tags.find(place);
  return found == county_.node_tags.end() ? none : found->second;
}

Point Net::point(Spot place) const {
  return point_from_degrees(flat_.lat(place.y()), flat_.lon(place.x()));
}

std::vector<Spot> Net::tagged(const std::string& key) const {
  std::vector<Spot> found;
  for (const auto& [place, tags] : county_.node_tags) {
    if (tags.contains(key) && arms_.contains(place)) found.push_back(place);
  }
  std::ranges::sort(found);
  return found;
}

}  // namespace loopwright::county
