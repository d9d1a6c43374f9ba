// What stands on and beside roads that are joined: a sign takes the nearest point of the nearest
// road, which becomes a point of its own.
#include <algorithm>
#include <cmath>

#include "county/draft.hpp"
#include "county/joining.hpp"

namespace loopwright::county {
namespace {

constexpr double front_m = 9;    // house fronts from the middle of the street, ours
constexpr double corner_m = 12;  // and from its corners, ours
constexpr double kerb_m = 5;     // a bus stop's pole from the middle of the road, ours
constexpr double sign_merge_m = 2;
constexpr double light_m = 7;  // a light on a ring before the entry it guards, ours

void lay(Tags& on, const Tags& tags) {
  for (const auto& [key, value] : tags) on[key] = value;
}

class Hand {
 public:
  explicit Hand(Draft& draft)
      : draft_(draft), county_(draft.county), grid_(grid_of_roads(draft.county)) {}
  void operator()(const PlanSign& sign);
  void operator()(const PlanControl& control);
  void operator()(const PlanHouses& houses);
  void operator()(const PlanStop& stop);
  void light(const RingLight& light);

 private:
  std::optional<Near> nearest_road(Spot place, bool service) const;

  Draft& draft_;
  Drawing& county_;
  LineGrid grid_;  // signs leave roads where they are, so it holds to the end
};

std::optional<Near> Hand::nearest_road(Spot place, bool service) const {
  std::optional<Near> found;
  for (const bool grown : {false, true}) {  // a plan's signs are meant for the plan's roads
    std::vector<std::size_t> roads;
    for (const std::size_t line : grid_.near(place, join_m)) {
      const LineKind kind = county_.lines[line].kind;
      if (county_.lines[line].grown != grown) continue;
      if (kind == LineKind::road || (service && kind == LineKind::service)) roads.push_back(line);
    }
    if (!found || found->foot.off_m > join_m) found = nearest_of(county_, roads, place);
  }
  return found && found->foot.off_m <= join_m ? found : std::nullopt;
}

void Hand::light(const RingLight& light) {
  const Ring& ring = county_.rings[light.ring];
  Line& line = county_.lines[ring.line];
  const Spot place = on_circle(ring.centre, ring.radius_m, light.angle + light_m / ring.radius_m);
  const Foot foot = nearest(line.points, place);
  county_.node_tags[add_point(line, foot.segment, foot.at, sign_merge_m)]["highway"] =
      "traffic_signals";
}

void Hand::operator()(const PlanSign& sign) {
  const auto road = nearest_road(sign.at, true);
  if (!road)
    return trouble(draft_, sign.number, "there is no road within 30 m of " + written(sign.at));
  Line& line = county_.lines[road->line];
  lay(county_.node_tags[add_point(line, road->foot.segment, road->foot.at, sign_merge_m)],
      sign.tags);
}

void Hand::operator()(const PlanControl& control) {
  const auto place = junction_near(county_, grid_, control.at);
  if (!place)
    return trouble(draft_, control.number,
                   "there is no junction within 30 m of " + written(control.at));
  lay(county_.node_tags[*place], control.tags);
}

void Hand::operator()(const PlanHouses& houses) {
  int number = 1;
  for (const Line& line : county_.lines) {
    const auto name = line.tags.find("name");
    if (!for_cars(line.kind) || name == line.tags.end() || name->second != houses.street) continue;
    const double last = std::floor(length_m(line.points) - corner_m);
    for (double metres = 0; corner_m + metres < last; ++metres) {
      if (std::fmod(metres, houses.step_m) >= 1) continue;
      for (const double side : {front_m, -front_m}) {
        Tags tags{{"addr:housenumber", std::to_string(number++)}, {"addr:street", houses.street}};
        lay(tags, houses.tags);
        county_.lone.push_back({along(line.points, corner_m + metres, side), std::move(tags)});
      }
    }
  }
  if (number == 1)
    trouble(draft_, houses.number,
            "there is no street '" + houses.street + "' with room for houses");
}

void Hand::operator()(const PlanStop& stop) {
  const auto road = nearest_road(stop.at, false);
  if (!road)
    return trouble(draft_, stop.number, "there is no road within 30 m of " + written(stop.at));
  const std::vector<Spot>& points = county_.lines[road->line].points;
  std::vector<Spot> before(points.begin(),
                           points.begin() + static_cast<long>(road->foot.segment) + 1);
  before.push_back(road->foot.at);
  const Spot pole = along(points, length_m(before), stop.back ? -kerb_m : kerb_m);
  county_.lone.push_back({pole, {{"highway", "bus_stop"}, {"name", stop.name}}});
}

}  // namespace

void put_late(Draft& draft, const Plan& plan) {
  Hand hand(draft);
  for (const RingLight& light : draft.lights) hand.light(light);
  for (const PlanLate& late : plan.late) std::visit(hand, late);
}

}  // namespace loopwright::county
