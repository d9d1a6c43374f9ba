// 1. Lengths: each way's, all of them, the one-way part; the lengths' percentiles.
// 2. Degrees: arms at each point where a way ends or two meet; a point inside one way isn't one.
// 3. Places: what is mapped in several parts (a ring of four ways, lights on each approach, two
//    tracks) is counted once, by distance.
#include "county/figures.hpp"

#include <algorithm>
#include <array>
#include <numeric>

#include "loopwright/base/error.hpp"

namespace loopwright::county {
namespace {

constexpr double km = 1000, hundred_km = 100'000;
constexpr double signals_apart_m = 40;   // one junction: MAP-TAGS 1.8
constexpr double crossing_apart_m = 60;  // one crossing over several tracks: MAP-TAGS 1.4

enum class Roads { without_service, all };
bool counts(const MapWay& way, Roads which) {
  return which == Roads::all || !way.service();
}

double length_of(const RoadMap& map, const MapWay& way) {
  std::vector<Point> line;
  for (const std::int64_t node : way.nodes) line.push_back(map.nodes.at(node).at);
  return length_m(line);
}

double share(double part, double whole) {
  return whole > 0 ? 100 * part / whole : 0;
}
double per(double count, double length, double unit) {
  return length > 0 ? count * unit / length : 0;
}

/// Arms at each node that is an end of a way or shared by two.
std::vector<int> degrees(const RoadMap& map, Roads which) {
  struct Use {
    int arms = 0, visits = 0;
    bool end = false;
  };
  std::unordered_map<std::int64_t, Use> uses;
  for (const MapWay& way : map.ways) {
    if (!counts(way, which)) continue;
    for (std::size_t i = 0; i < way.nodes.size(); ++i) {
      const bool end = i == 0 || i + 1 == way.nodes.size();
      Use& use = uses[way.nodes[i]];
      use.arms += end ? 1 : 2;
      use.visits += 1;
      use.end = use.end || end;
    }
  }
  std::vector<int> found;
  for (const auto& [id, use] : uses) {
    if (use.end || use.visits > 1) found.push_back(use.arms);
  }
  return found;
}

/// How many groups there are when places nearer than so many metres to one of a group join it.
std::size_t grouped(const std::vector<Point>& places, double metres) {
  std::vector<bool> taken(places.size());
  std::size_t groups = 0;
  for (std::size_t first = 0; first < places.size(); ++first) {
    if (taken[first]) continue;
    ++groups;
    taken[first] = true;
    for (std::vector<std::size_t> open{first}; !open.empty();) {
      const Point here = places[open.back()];
      open.pop_back();
      for (std::size_t i = 0; i < places.size(); ++i) {
        if (taken[i] || distance_m(here, places[i]) > metres) continue;
        taken[i] = true;
        open.push_back(i);
      }
    }
  }
  return groups;
}

/// Points of roads other than service roads that have a mark, each once.
std::vector<Point> marked(const RoadMap& map, bool MapNode::*mark) {
  std::vector<std::int64_t> ids;
  for (const MapWay& way : map.ways) {
    if (way.service()) continue;
    std::ranges::copy_if(way.nodes, std::back_inserter(ids),
                         [&](std::int64_t id) { return map.nodes.at(id).*mark; });
  }
  std::ranges::sort(ids);
  const auto repeated = std::ranges::unique(ids);
  ids.erase(repeated.begin(), repeated.end());
  std::vector<Point> places;
  for (const std::int64_t id : ids) places.push_back(map.nodes.at(id).at);
  return places;
}

/// Roundabouts: ring ways that share a point are one.
std::size_t rings(const RoadMap& map) {
  std::unordered_map<std::int64_t, std::int64_t> parent;
  const auto root = [&](std::int64_t id) {
    parent.try_emplace(id, id);
    while (parent.at(id) != id) id = parent.at(id);
    return id;
  };
  for (const MapWay& way : map.ways) {
    if (!way.ring) continue;
    for (const std::int64_t node : way.nodes) parent[root(node)] = root(way.nodes.front());
  }
  return static_cast<std::size_t>(
      std::ranges::count_if(parent, [](const auto& link) { return link.first == link.second; }));
}

/// Everything a figure is taken from.
struct Counted {
  const RoadMap& map;
  std::vector<double> road_m, service_m;  ///< lengths of ways, ascending
  double roads_m = 0, all_m = 0, one_way_m = 0;
};

Counted count(const RoadMap& map) {
  Counted out{map, {}, {}};
  for (const MapWay& way : map.ways) {
    const double length = length_of(map, way);
    (way.service() ? out.service_m : out.road_m).push_back(length);
    if (way.one_way && !way.service()) out.one_way_m += length;
  }
  std::ranges::sort(out.road_m);
  std::ranges::sort(out.service_m);
  out.roads_m = std::accumulate(out.road_m.begin(), out.road_m.end(), 0.0);
  out.all_m = std::accumulate(out.service_m.begin(), out.service_m.end(), out.roads_m);
  return out;
}

void add_classes(const Counted& counted, std::vector<Figure>& figures) {
  constexpr std::array classes{"motorway", "trunk",        "primary",     "secondary",
                               "tertiary", "unclassified", "residential", "living_street",
                               "service",  "road"};
  const std::vector<MapWay>& ways = counted.map.ways;
  for (const std::string_view name : classes) {
    const auto n = static_cast<std::size_t>(
        std::ranges::count_if(ways, [&](const MapWay& way) { return way.road_class == name; }));
    figures.push_back({"ways, % " + std::string(name),
                       share(static_cast<double>(n), static_cast<double>(ways.size())), 1, n});
  }
}

void add_lengths(const Counted& counted, std::vector<Figure>& figures) {
  figures.push_back({"ways per km, without service",
                     per(static_cast<double>(counted.road_m.size()), counted.roads_m, km), 2,
                     counted.road_m.size()});
  figures.push_back({"ways per km, all",
                     per(static_cast<double>(counted.map.ways.size()), counted.all_m, km), 2,
                     counted.map.ways.size()});
  const auto percentiles = [&](const std::string& what, const std::vector<double>& sorted) {
    for (const std::size_t percent : {10U, 50U, 90U}) {
      const double value = sorted.empty() ? 0 : sorted[(sorted.size() - 1) * percent / 100];
      figures.push_back({what + " length m, " + std::to_string(percent) + " %", value, 0, {}});
    }
  };
  percentiles("road", counted.road_m);
  percentiles("service road", counted.service_m);
}

void add_degrees(const Counted& counted, Roads which, std::vector<Figure>& figures) {
  const std::vector<int> found = degrees(counted.map, which);
  const std::string suffix = which == Roads::all ? ", all" : "";
  for (int degree = 1; degree <= 5; ++degree) {
    const auto n = static_cast<std::size_t>(std::ranges::count_if(
        found, [&](int arms) { return degree == 5 ? arms >= 5 : arms == degree; }));
    const std::string arms = std::to_string(degree) + (degree == 2 ? "*" : degree == 5 ? "+" : "");
    figures.push_back({"points, % with " + arms + " arms" + suffix,
                       share(static_cast<double>(n), static_cast<double>(found.size())), 1, n});
  }
  if (which == Roads::all) return;
  const auto ends = static_cast<std::size_t>(std::ranges::count(found, 1));
  figures.push_back(
      {"dead ends per km", per(static_cast<double>(ends), counted.roads_m, km), 2, ends});
}

void add_places(const Counted& counted, std::vector<Figure>& figures) {
  const auto add = [&](const char* name, std::size_t n) {
    figures.push_back({std::string(name) + " per 100 km",
                       per(static_cast<double>(n), counted.roads_m, hundred_km), 1, n});
  };
  const RoadMap& map = counted.map;
  add("roundabouts", rings(map));
  add("mini-roundabouts", marked(map, &MapNode::mini).size());
  add("level crossings", grouped(marked(map, &MapNode::level_crossing), crossing_apart_m));
  add("zebras", marked(map, &MapNode::zebra).size());
  add("signal crossings", marked(map, &MapNode::signal_crossing).size());
  add("signalled junctions", grouped(marked(map, &MapNode::signals), signals_apart_m));
  add("calming points", marked(map, &MapNode::calming).size());
  add("turn bans", map.turn_bans);
}

void add_tags(const Counted& counted, std::vector<Figure>& figures) {
  const auto add = [&](const char* name, bool MapWay::*tag) {
    const auto n = static_cast<std::size_t>(std::ranges::count_if(
        counted.map.ways, [&](const MapWay& way) { return !way.service() && way.*tag; }));
    figures.push_back({std::string("roads, % with ") + name,
                       share(static_cast<double>(n), static_cast<double>(counted.road_m.size())), 1,
                       n});
  };
  add("maxspeed", &MapWay::limit);
  add("lit", &MapWay::lit);
  add("width", &MapWay::width);
  add("name", &MapWay::name);
}

}  // namespace

std::vector<Figure> figures_of(const RoadMap& map) {
  const Counted counted = count(map);
  std::vector<Figure> figures{
      {"km of road, without service", counted.roads_m / km, 0, {}},
      {"km of service road", (counted.all_m - counted.roads_m) / km, 0, {}}};
  add_classes(counted, figures);
  add_lengths(counted, figures);
  add_degrees(counted, Roads::without_service, figures);
  add_degrees(counted, Roads::all, figures);
  figures.push_back(
      {"% of road that is one-way", share(counted.one_way_m, counted.roads_m), 1, {}});
  add_places(counted, figures);
  add_tags(counted, figures);
  return figures;
}

}  // namespace loopwright::county
