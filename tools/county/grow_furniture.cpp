// What stands on and beside streets. A sign on a street is a Spot of its own, away from junctions.
#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "county/grow_dress.hpp"
#include "county/grow_ground.hpp"
#include "county/names.hpp"

namespace loopwright::county {
namespace {

constexpr double kerb_m = 5;     // a bus stop's pole from the middle of the road
constexpr double stops_m = 380;  // between bus stops
constexpr double humps_m = 75;   // between humps; 20 to 150 m by the council summary in MAP-TAGS.md
constexpr double free_m = 18;    // round a crossing or a hump, from other Spots that mean something

bool has(const Line& line, const char* key, const char* value) {
  const auto tag = line.tags.find(key);
  return tag != line.tags.end() && tag->second == value;
}

using Counts = std::unordered_map<Spot, int, SpotHash>;

class Furnishing {
 public:
  Furnishing(Drawing& county, Dice& dice) : county_(county), dice_(dice) {
    for (const Line& line : county.lines)
      for (const Spot spot : line.points) {
        ++uses_[spot];
        if (main_street(line)) main_spots_.insert(spot);
      }
  }

  void go() {
    const std::size_t lines = county_.lines.size();
    for (std::size_t n = 0; n < lines; ++n) {
      const Line& line = county_.lines[n];
      if (line.kind != LineKind::road || line.layer != 0 || !has(line, "lit", "yes")) continue;
      if (!line.grown) {
        if (main_street(line)) put_crossings(n);
        continue;
      }
      put_signals(n);
      if (rank(line) >= 3) {
        put_crossings(n);
        put_stops(n);
      } else if (rank(line) == 1 && length_m(line.points) > 170 && dice_.below(9) == 0) {
        put_calming(n);
      }
      if (dice_.below(30) == 0) put_shop(n);
      if (dice_.below(14) == 0) put_give_way(n);
    }
  }

 private:
  /// Puts tags on a Spot of its own in the line, if nothing else is near.
  bool put_on(std::size_t number, double at_m, const Tags& tags) {
    std::vector<Spot>& points = county_.lines[number].points;
    const Spot at = along(points, at_m);
    for (const Spot other : points)
      if (apart(other, at) < free_m && (uses_[other] > 1 || county_.node_tags.contains(other)))
        return false;
    const std::size_t segment = nearest(points, at).segment;
    const Spot a = points[segment];
    const Spot b = points[segment + 1];
    const Spot own = apart(a, at) < 2 ? a : apart(b, at) < 2 ? b : at;
    if (own != a && own != b)
      points.insert(points.begin() + static_cast<std::ptrdiff_t>(segment) + 1, at);
    ++uses_[own];
    county_.node_tags[own].insert(tags.begin(), tags.end());
    return true;
  }

  static bool main_street(const Line& line) {
    return rank(line) >= 3 && rank(line) <= 5 && has(line, "maxspeed", "30 mph") &&
           !line.tags.contains("oneway") && !line.tags.contains("bridge");
  }

  /// Lights where a street meets a main street, at some of these junctions.
  void put_signals(std::size_t number) {
    const Line& line = county_.lines[number];
    if (rank(line) > 2 || line.ends[1] == End::closed) return;
    for (const Spot end : {line.points.front(), line.points.back()})
      if (main_spots_.contains(end) && !county_.node_tags.contains(end) && dice_.below(4) == 0)
        county_.node_tags[end]["highway"] = "traffic_signals";
  }

  void put_crossings(std::size_t number) {
    const double size = length_m(county_.lines[number].points);
    for (double at_m = 90 + 120 * dice_.share(); at_m < size - 30;
         at_m += 240 + 260 * dice_.share()) {
      Tags tags{{"highway", "crossing"}};
      if (dice_.below(2) == 0) {
        tags["crossing"] = "uncontrolled";
        tags["crossing:markings"] = "zebra";
        tags["crossing_ref"] = "zebra";
      } else {
        tags["crossing"] = "traffic_signals";
        tags["crossing_ref"] = dice_.below(3) == 0 ? "toucan" : "puffin";
      }
      put_on(number, at_m, tags);
    }
  }

  void put_stops(std::size_t number) {
    const Line& line = county_.lines[number];
    const double size = length_m(line.points);
    for (double at_m = 60 + 100 * dice_.share(); at_m < size - 50;
         at_m += stops_m * (0.7 + 0.6 * dice_.share())) {
      const std::string name = stop_name(number, at_m);
      for (const int side : {1, -1})
        county_.lone.push_back({along(line.points, at_m + 18 * side, side * kerb_m),
                                {{"highway", "bus_stop"}, {"name", name}}});
    }
  }

  /// The name of the street itself and how far along, so that no two are called the same.
  std::string stop_name(std::size_t number, double at_m) const {
    static constexpr std::array places{"Foot", "Lower", "Middle", "Upper", "Top"};
    const Line& line = county_.lines[number];
    const double share = at_m / length_m(line.points);
    const auto which = std::min<std::size_t>(4, static_cast<std::size_t>(5 * share));
    const auto name = line.tags.find("name");
    return name == line.tags.end() ? places[which] : name->second + " " + places[which];
  }

  void put_calming(std::size_t number) {
    static constexpr std::array kinds{"hump", "cushion", "table", "hump"};
    const char* kind = kinds[dice_.below(kinds.size())];
    const double size = length_m(county_.lines[number].points);
    for (double at_m = 40; at_m < size - 35; at_m += humps_m)
      put_on(number, at_m, {{"traffic_calming", kind}});
  }

  void put_shop(std::size_t number) {
    static constexpr std::array shops{"convenience", "bakery", "hairdresser", "newsagent",
                                      "chemist"};
    const Line& line = county_.lines[number];
    const Spot at = along(line.points, 20, dice_.below(2) == 0 ? 9 : -9);
    const auto names = shop_names();
    std::string name(names[dice_.below(names.size())]);
    if (const auto street = line.tags.find("name"); street != line.tags.end())
      name += " " + street->second.substr(0, street->second.rfind(' '));
    county_.lone.push_back({at, {{"shop", shops[dice_.below(shops.size())]}, {"name", name}}});
  }

  /// A give-way sign 6 m before where a street joins another.
  void put_give_way(std::size_t number) {
    Line& line = county_.lines[number];
    if (line.ends[1] != End::meets || line.points.size() < 2 || has(line, "oneway", "yes")) return;
    const Spot end = line.points.back();
    const Spot inner = line.points[line.points.size() - 2];
    if (uses_[end] < 2 || apart(end, inner) < 14 || county_.node_tags.contains(end)) return;
    const Spot at = towards(end, inner, 6);
    line.points.insert(line.points.end() - 1, at);
    county_.node_tags[at] = {{"highway", "give_way"}, {"direction", "forward"}};
  }

  Drawing& county_;
  Dice& dice_;
  Counts uses_;
  std::unordered_set<Spot, SpotHash> main_spots_;
};

}  // namespace

void furnish_streets(Drawing& county, Dice& dice) {
  Furnishing(county, dice).go();
}

}  // namespace loopwright::county
