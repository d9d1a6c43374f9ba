// One-way: a street stays two-way unless its last Spot still reaches its first over other roads; as
// everything hung together before, it then still does.
// Cuts: streets mostly at junctions, as what is surveyed mostly changes there; main roads anywhere.
#include <algorithm>
#include <array>
#include <deque>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "county/grow_cut.hpp"
#include "county/grow_dress.hpp"
#include "county/grow_ground.hpp"

namespace loopwright::county {
namespace {

using Net = std::unordered_map<Spot, std::vector<Spot>, SpotHash>;  // where one may drive next

void put_line(Net& net, const Line& line) {
  const auto tag = line.tags.find("oneway");
  const std::string way = tag == line.tags.end() ? "" : tag->second;
  const bool ring = line.tags.contains("junction");
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    const Spot a = line.points[i - 1];
    const Spot b = line.points[i];
    if (way != "-1") net[a].push_back(b);
    if (way == "-1" || (way != "yes" && !ring)) net[b].push_back(a);
  }
}

Net net_of(const Drawing& county) {
  Net net;
  for (const Line& line : county.lines) {
    const auto barred = [&](const char* key) {
      const auto tag = line.tags.find(key);
      return tag != line.tags.end() && (tag->second == "no" || tag->second == "private");
    };
    if (rank(line) < 1 || barred("motor_vehicle") || barred("access")) continue;
    put_line(net, line);
  }
  return net;
}

/// Whether one place is reached from another without driving a line against its order.
bool reached(const Net& net, Spot from, Spot to, const std::vector<Spot>& one_way) {
  std::unordered_map<Spot, Spot, SpotHash> before;  // the Spot that comes before one of the street
  for (std::size_t i = 1; i < one_way.size(); ++i) before[one_way[i]] = one_way[i - 1];
  std::unordered_set<Spot, SpotHash> seen{from};
  std::deque<Spot> open{from};
  while (!open.empty()) {
    const Spot at = open.front();
    open.pop_front();
    if (at == to) return true;
    const auto against = before.find(at);
    for (const Spot next : net.at(at))
      if ((against == before.end() || against->second != next) && seen.insert(next).second)
        open.push_back(next);
  }
  return false;
}

bool may_be_one_way(const Line& line) {
  if (!line.grown || line.kind != LineKind::road || rank(line) != 1) return false;
  if (line.ends[1] != End::meets || line.tags.contains("oneway")) return false;
  const double size = length_m(line.points);
  return size > 60 && size < 420;
}

void drop_way_back(Net& net, const std::vector<Spot>& points) {
  for (std::size_t i = 1; i < points.size(); ++i) std::erase(net[points[i]], points[i - 1]);
}

/// Junctions within a line, and some of the places between them, where what is surveyed changes.
std::vector<Spot> street_places(const Line& line,
                                const std::unordered_map<Spot, int, SpotHash>& arms, Dice& dice) {
  std::vector<Spot> found;
  for (std::size_t i = 1; i + 1 < line.points.size(); ++i)
    if (arms.at(line.points[i]) > 2 || dice.below(12) == 0) found.push_back(line.points[i]);
  return found;
}

std::unordered_map<Spot, int, SpotHash> arms_of(const Drawing& county) {
  std::unordered_map<Spot, int, SpotHash> arms;
  for (const Line& line : county.lines) {
    if (rank(line) < 1) continue;
    for (std::size_t i = 0; i < line.points.size(); ++i)
      arms[line.points[i]] += i == 0 || i + 1 == line.points.size() ? 1 : 2;
  }
  return arms;
}

bool is_main(const Line& line) {
  const auto tag = line.tags.find("highway");
  return tag != line.tags.end() && (tag->second == "motorway" || tag->second == "primary" ||
                                    tag->second == "secondary" || tag->second == "tertiary");
}

/// How long a way gets before it is cut at the next place, and how long it is at least.
struct Lengths {
  double longest_m = 0;  ///< 0: never cut
  double least_m = 0;
};

/// Main roads are told apart more finely than streets, the plan's too; other roads of the plan stay as
/// they are. Lengths are ours, by the medians of an extract's ways (tools' compare-maps).
Lengths lengths_of(const Line& line) {
  const auto tag = line.tags.find("highway");
  const std::string highway = tag == line.tags.end() ? "" : tag->second;
  if (highway == "motorway") return {150, 60};
  if (highway == "primary") return {200, 60};
  if (highway == "secondary") return {240, 70};
  if (highway == "tertiary") return {90, 40};
  return line.grown ? Lengths{420, 90} : Lengths{};
}

/// Streets are cut at their junctions and here and there between, main roads at any of their points.
std::vector<Spot> places_to_cut(const Line& line,
                                const std::unordered_map<Spot, int, SpotHash>& arms, Dice& dice) {
  if (!is_main(line)) return street_places(line, arms, dice);
  return {line.points.begin() + 1, line.points.end() - 1};
}

/// What is surveyed of one part of a street and not of another; a main road keeps its width.
void vary(Tags& tags, Dice& dice, bool main) {
  static constexpr std::array widths{"5", "5.5", "6", "6.5", "7"};
  static constexpr std::array surfaces{"asphalt", "asphalt", "concrete"};
  switch (dice.below(4)) {
    case 0:
      if (!main && !tags.contains("parking:both") && !tags.contains("parking:lane:both"))
        tags["width"] = widths[dice.below(widths.size())];
      return;
    case 1:
      tags["surface"] = surfaces[dice.below(surfaces.size())];
      return;
    case 2:
      tags["sidewalk"] = dice.below(3) == 0 ? "left" : "both";
      return;
    default:
      return;
  }
}

}  // namespace

void clear_junctions(Drawing& county) {
  const auto arms = arms_of(county);
  for (auto& [at, tags] : county.node_tags) {
    const auto highway = tags.find("highway");
    if (highway == tags.end() || highway->second != "passing_place") continue;
    if (const auto count = arms.find(at); count == arms.end() || count->second <= 2) continue;
    tags.erase(highway);
    tags.erase("passing_place");
  }
}

void make_one_way(Drawing& county, Dice& dice) {
  constexpr std::size_t one_in = 2;
  Net net = net_of(county);
  for (Line& line : county.lines) {
    if (!may_be_one_way(line) || dice.below(one_in) != 0) continue;
    if (!reached(net, line.points.back(), line.points.front(), line.points)) continue;
    line.tags["oneway"] = "yes";
    drop_way_back(net, line.points);
  }
}

void cut_streets(Drawing& county, Dice& dice) {
  const auto arms = arms_of(county);
  const std::size_t lines = county.lines.size();
  for (std::size_t n = 0; n < lines; ++n) {
    if (county.lines[n].kind != LineKind::road) continue;
    const Lengths lengths = lengths_of(county.lines[n]);
    if (lengths.longest_m == 0) continue;
    std::size_t piece = n;
    for (const Spot at : places_to_cut(county.lines[n], arms, dice)) {
      const std::vector<Spot>& points = county.lines[piece].points;
      const auto where = std::find(points.begin(), points.end(), at);
      const double done = length_m({points.begin(), where + 1});
      if (done < lengths.longest_m && (done < lengths.least_m || dice.below(4) != 0)) continue;
      piece = cut(county, piece, at);
      vary(county.lines[piece].tags, dice, is_main(county.lines[piece]));
    }
  }
}

}  // namespace loopwright::county
