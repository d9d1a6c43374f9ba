// Lanes for buses in the three families of tags (MAP-TAGS 1.5), for cycles (1.8), rails of trams in
// the road, and lanes that end.
#include <algorithm>

#include "county/truth_parts.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

using road::bit;
using road::Kind;

constexpr double rails_m = 8;  // from the middle of a road to rails that lie in it

/// The hours of "1 @ (Mo-Fr 07:00-09:30)": what stands behind the at; empty for several clauses.
std::string hours_in(const std::string& conditional) {
  const std::size_t at = conditional.find('@');
  if (at == std::string::npos || conditional.find('@', at + 1) != std::string::npos) return "";
  std::string text(trim(std::string_view(conditional).substr(at + 1)));
  if (text.starts_with('(') && text.ends_with(')')) text = text.substr(1, text.size() - 2);
  return text;
}

struct BusLane {
  Course course = Course::any;
  std::string hours;
  bool hours_known = true;  ///< false: several texts, not told here
};

class BusTags {
 public:
  explicit BusTags(const Road& road) : road_(road) {}
  std::vector<BusLane> lanes() {
    for (const char* who : {"bus", "psv"}) {
      for (const char* side : {"", ":forward", ":backward"}) {
        const std::string count = std::string("lanes:") + who + side;
        add(side, road_.tag(count) != "0" ? road_.tag(count) : "",
            road_.tag(count + ":conditional"));
        const std::string each = std::string(who) + ":lanes" + side;
        const bool lane = road_.tag(each).find("designated") != std::string::npos;
        add(side, lane ? road_.tag(each) : "", road_.tag(each + ":conditional"));
      }
    }
    for (const char* side : {"", ":left", ":right", ":both"}) add_busway(side);
    return found_;
  }

 private:
  void add(const std::string& side, const std::string& base, const std::string& conditional) {
    if (base.empty() && conditional.find("designated") == std::string::npos &&
        !conditional.starts_with("1"))
      return;
    const Course course = side == ":forward"    ? Course::along
                          : side == ":backward" ? Course::against
                          : road_.two_way()     ? Course::any
                          : road_.along         ? Course::along
                                                : Course::against;
    put(course, conditional);
  }
  void add_busway(const std::string& side) {
    const std::string& what = road_.tag("busway" + side);
    const std::string& conditional = road_.tag("busway:conditional");
    if (what == "opposite_lane")
      return put(road_.along ? Course::against : Course::along, conditional);
    if (what != "lane") return;
    const bool one_way = !road_.two_way();
    const Course with = road_.along ? Course::along : Course::against;
    if (one_way) return put(with, conditional);
    if (side != ":right") put(Course::along, conditional);
    if (side != ":left") put(Course::against, conditional);
  }
  /// Another family's tag may tell the same lane.
  void put(Course course, const std::string& conditional) {
    const std::string hours = hours_in(conditional);
    const bool known = conditional.empty() || !hours.empty();
    for (BusLane& lane : found_) {
      if (lane.course != course) continue;
      if (lane.hours.empty()) lane.hours = hours;
      lane.hours_known = lane.hours_known && known && (hours.empty() || hours == lane.hours);
      return;
    }
    found_.push_back({course, hours, known});
  }
  const Road& road_;
  std::vector<BusLane> found_;
};

void tell_bus(const Road& road, Rows& rows) {
  for (const BusLane& lane : BusTags(road).lanes()) {
    const std::string says = lane.hours_known ? "hours=" + lane.hours : "";
    rows.add({Duty::must, bit(Kind::bus_lane), lane.course, says, road.way, road.length});
  }
}

void tell_cycles(const Road& road, Rows& rows) {
  const auto lane = [&](const char* key) { return road.tag(key) == "lane"; };
  const bool both = lane("cycleway") || lane("cycleway:both");
  const bool left = both || lane("cycleway:left"), right = both || lane("cycleway:right");
  if (!left && !right) return;
  if (road.two_way()) {
    if (left) rows.must_along(Kind::cycle_lane, road, Course::along, road.length);
    if (right) rows.must_along(Kind::cycle_lane, road, Course::against, road.length);
  } else if ((road.along && left) || (!road.along && right)) {
    rows.must_along(Kind::cycle_lane, road, road.along ? Course::along : Course::against,
                    road.length);
  } else {
    rows.may_along(bit(Kind::cycle_lane), road, Course::both);
  }
}

/// The end of a road in the direction of its points, or against.
Spot end_of(const Road& road, bool along) {
  return along ? road.line->points.back() : road.line->points.front();
}

void tell_merges(const Net& net, const Road& road, Rows& rows) {
  for (const bool along : {true, false}) {
    if (!(along ? road.along : road.against)) continue;
    const Spot end = end_of(road, along);
    const std::string& turns = road.tag(along ? "turn:lanes:forward" : "turn:lanes:backward");
    const std::string& all = road.two_way() ? turns : road.tag("turn:lanes");
    const bool arrow =
        turns.find("merge_to") != std::string::npos || all.find("merge_to") != std::string::npos;
    const auto& arms = net.arms(end);
    bool fewer = false;
    if (arms.size() == 2) {
      for (const Arm& arm : arms) {
        const Road& next = net.road(arm);
        if (&next == &road) continue;
        const int here = lanes_of(road, along), there = lanes_of(next, arm.step > 0);
        fewer = here >= 2 && there >= 1 && there < here && next.learner && !next.ring;
      }
    }
    // At a ring nobody merges, and a road that is mapped in parts has its arrow on each.
    const bool goes_on = std::ranges::any_of(arms, [&](const Arm& arm) {
      const Road& next = net.road(arm);
      const bool same =
          &next != &road && next.tag("turn:lanes:forward").find("merge_to") != std::string::npos;
      return next.ring || same;
    });
    if ((arrow || fewer) && !goes_on)
      rows.must_at(Kind::lanes_merge, end, 60);
    else if (arms.size() >= 2 && lanes_of(road, along) != 1)
      rows.may_at(bit(Kind::lanes_merge), end, 60);
  }
}

/// Filter lanes: an arrow of its own for the turn, at lights.
void tell_filters(const Net& net, const Road& road, Rows& rows) {
  for (const bool along : {true, false}) {
    if (!(along ? road.along : road.against)) continue;
    const std::string& by_side = road.tag(along ? "turn:lanes:forward" : "turn:lanes:backward");
    const std::string& turns =
        by_side.empty() && !road.two_way() ? road.tag("turn:lanes") : by_side;
    if (turns.empty()) continue;
    const Spot end = end_of(road, along);
    const bool lit = std::ranges::any_of(net.tagged("highway"), [&](Spot p) {
      return apart(p, end) < 35 && says(net.tags(p), "highway", {"traffic_signals"});
    });
    std::string moves;
    bool through = false;
    for (const std::string_view lane : split(turns, '|')) {
      if (lane == "left" || lane == "right") {
        if (moves.find(lane) == std::string::npos)
          moves += (moves.empty() ? "moves=" : ",") + std::string(lane);
      } else {
        through = true;
      }
    }
    if (moves.empty()) continue;
    if (lit && through)
      rows.must_at(Kind::filter_lane, end, 60, moves);
    else
      rows.may_at(bit(Kind::filter_lane), end, 60);
  }
}

/// Rails in the road: tram lines that share two points of it in a row; across: one point.
void tell_trams(const Net& net, Rows& rows) {
  for (const Line& tram : net.county().lines) {
    if (tram.kind != LineKind::tram) continue;
    for (const Spot p : tram.points)
      if (!net.arms(p).empty()) rows.may_at(bit(Kind::tram_crossing), p, 25);
    for (const Road& road : net.roads()) {
      const bool beside = std::ranges::any_of(
          road.line->points, [&](Spot p) { return nearest(tram.points, p).off_m < rails_m; });
      if (beside) rows.may_along(bit(Kind::tram), road, Course::both);
    }
    for (std::size_t i = 0; i + 1 < tram.points.size(); ++i) {
      for (const Road& road : net.roads()) {
        const auto& line = road.line->points;
        const bool shares = std::ranges::count(line, tram.points[i]) > 0 &&
                            std::ranges::count(line, tram.points[i + 1]) > 0;
        if (shares && road.learner && !road.service() && !road.ring)
          rows.must_along(Kind::tram, road, Course::both, 0);
      }
    }
  }
}

}  // namespace

void tell_lanes(const Net& net, Rows& rows) {
  for (const Road& road : net.roads()) {
    if (road.service() || road.ring || !road.learner) continue;
    tell_bus(road, rows);
    if (road.link) continue;
    tell_cycles(road, rows);
    tell_merges(net, road, rows);
    tell_filters(net, road, rows);
    if (road.tag("embedded_rails") == "tram") rows.must_along(Kind::tram, road, Course::both, 0);
  }
  tell_trams(net, rows);
}

}  // namespace loopwright::county
