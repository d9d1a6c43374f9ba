// 1. The road is bent as the plan's reader will bend it, and every place where it crosses a barrier is
//    found on the curve.
// 2. A bridge is a straight part of 60 m there; the road's own points near it are left out, so that
//    it doesn't wind.
#include "county/other_roads.hpp"

#include <algorithm>
#include <utility>

#include "county/draft.hpp"

namespace loopwright::county {
namespace {

constexpr double half_bridge_m = 30;
constexpr double clear_m = 90;  // no point of the road this near to a bridge's middle

struct Crossing {
  double along_m = 0;
  Spot at;
  bool rail = false;
};

std::vector<Crossing> crossings_of(const std::vector<Spot>& curve,
                                   const std::vector<Barrier>& barriers) {
  std::vector<Crossing> found;
  double before = 0;
  for (std::size_t i = 0; i + 1 < curve.size(); ++i) {
    for (const Barrier& barrier : barriers)
      for (std::size_t j = 0; j + 1 < barrier.curve.size(); ++j)
        if (const auto at = meeting(curve[i], curve[i + 1], barrier.curve[j], barrier.curve[j + 1]))
          found.push_back({before + apart(curve[i], *at), *at, barrier.rail});
    before += apart(curve[i], curve[i + 1]);
  }
  std::ranges::sort(found, {}, &Crossing::along_m);
  return found;
}

double metres_to(const std::vector<Spot>& curve, Spot place) {
  const Foot foot = nearest(curve, place);
  return length_m(std::span(curve).first(foot.segment + 1)) + apart(curve[foot.segment], foot.at);
}

class Writer {
 public:
  Writer(const OtherRoad& road, std::string& out) : road_(road), out_(out) {}
  /// A part from one of its ends to another; ends of the road itself are told by first and last.
  void part(std::vector<Spot> points, bool first, bool last, const std::string& more) {
    out_ += "road " + road_.name + ' ' + road_.highway + ' ';
    if (first && !road_.rings[0].empty()) {
      out_ += road_.rings[0] + ' ';
      points.erase(points.begin());
    }
    const bool ring = last && !road_.rings[1].empty();
    if (ring) points.pop_back();
    out_ += plan_points(points) + ' ';
    if (ring) out_ += road_.rings[1] + ' ';
    out_ += road_.tags + more;
    if (first && !road_.ends[0].empty()) out_ += " first=" + road_.ends[0];
    if (last && !road_.ends[1].empty()) out_ += " last=" + road_.ends[1];
    out_ += '\n';
  }

 private:
  const OtherRoad& road_;
  std::string& out_;
};

std::string level_crossing(Spot at, Dice& dice) {
  constexpr std::array<const char*, 4> kinds{
      "crossing:barrier=full crossing:light=yes", "crossing:barrier=half crossing:light=yes",
      "crossing:barrier=half crossing:light=yes", "crossing:barrier=no crossing:light=no"};
  return "crossing " + written(at) + ' ' + kinds[dice.below(kinds.size())] + '\n';
}

}  // namespace

std::string plan_points(const std::vector<Spot>& points) {
  std::string out;
  for (const Spot point : points) out += (out.empty() ? "" : " ") + written(point);
  return out;
}

std::string plan_lines(const OtherRoad& road, const std::vector<Barrier>& barriers, Dice& dice) {
  const std::vector<Spot> curve = bend(road.points);
  std::string out;
  std::string late;
  Writer writer(road, out);
  std::vector<Spot> part{road.points.front()};
  std::size_t next = 1;
  bool first = true;
  double free_from_m = 0;
  const double length = length_m(curve);
  for (const Crossing& crossing : crossings_of(curve, barriers)) {
    if (crossing.rail && dice.thousandths() < 600) {
      late += level_crossing(crossing.at, dice);
      continue;
    }
    // Too near to a bridge or an end: no bridge, and the plan will be found at fault and redrawn.
    if (crossing.along_m < free_from_m + clear_m || crossing.along_m > length - clear_m) continue;
    free_from_m = crossing.along_m;
    for (; next < road.points.size() && metres_to(curve, road.points[next]) < crossing.along_m;
         ++next)
      if (apart(road.points[next], crossing.at) > clear_m) part.push_back(road.points[next]);
    const Spot start = along(curve, crossing.along_m - half_bridge_m);
    const Spot end = along(curve, crossing.along_m + half_bridge_m);
    part.push_back(start);
    writer.part(std::move(part), std::exchange(first, false), false, "");
    writer.part({start, end}, false, false, " bridge=yes layer=1");
    part = {end};
    while (next + 1 < road.points.size() && apart(road.points[next], crossing.at) < clear_m) ++next;
  }
  part.insert(part.end(), road.points.begin() + static_cast<long>(next), road.points.end());
  writer.part(std::move(part), first, true, "");
  return out + late;
}

}  // namespace loopwright::county
