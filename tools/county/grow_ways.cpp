// One-way: a street stays two-way unless its last Spot still reaches its first over other roads; as
// everything hung together before, it then still does.
// Cuts: only at junctions, so that a piece is what lies between two of them.
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

std::vector<Spot> inner_junctions(const Line& line,
                                  const std::unordered_map<Spot, int, SpotHash>& arms) {
  std::vector<Spot> found;
  for (std::size_t i = 1; i + 1 < line.points.size(); ++i)
    if (const auto count = arms.find(line.points[i]); count != arms.end() && count->second > 2)
      found.push_back(line.points[i]);
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

/// What is surveyed of one part of a street and not of another.
void vary(Tags& tags, Dice& dice) {
  static constexpr std::array widths{"5", "5.5", "6", "6.5", "7"};
  static constexpr std::array surfaces{"asphalt", "asphalt", "concrete"};
  switch (dice.below(4)) {
    case 0:
      if (!tags.contains("parking:both") && !tags.contains("parking:lane:both"))
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

void make_one_way(Drawing& county, Dice& dice) {
  constexpr std::size_t one_in = 4;
  Net net = net_of(county);
  for (Line& line : county.lines) {
    if (!may_be_one_way(line) || dice.below(one_in) != 0) continue;
    if (!reached(net, line.points.back(), line.points.front(), line.points)) continue;
    line.tags["oneway"] = "yes";
    drop_way_back(net, line.points);
  }
}

void cut_streets(Drawing& county, Dice& dice) {
  constexpr double longest_m = 420;  // a longer way is cut at its next junction
  constexpr double least_m = 90;     // no way shorter than this is cut by chance
  const auto arms = arms_of(county);
  const std::size_t lines = county.lines.size();
  for (std::size_t n = 0; n < lines; ++n) {
    if (!county.lines[n].grown || county.lines[n].kind != LineKind::road) continue;
    std::size_t piece = n;
    for (const Spot at : inner_junctions(county.lines[n], arms)) {
      const std::vector<Spot>& points = county.lines[piece].points;
      const auto where = std::find(points.begin(), points.end(), at);
      const double done = length_m({points.begin(), where + 1});
      if (done < longest_m && (done < least_m || dice.below(4) != 0)) continue;
      piece = cut(county, piece, at);
      vary(county.lines[piece].tags, dice);
    }
  }
}

}  // namespace loopwright::county
