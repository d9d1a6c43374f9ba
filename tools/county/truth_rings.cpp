// 1. Ring lines that share a point are one roundabout.
// 2. Its arms: roads that end or pass at its points. Two that meet again within 60 m of the ring are
//    one (a splitter island), and so are an entry and an exit of one name or number beside each other.
// 3. Kind: lights on it or at half of its entries; else two lanes on it or at an entry.
// MAP-TAGS 1.2; WORLD.
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>

#include "county/truth_parts.hpp"

namespace loopwright::county {
namespace {

using road::bit;
using road::Kind;
constexpr double flare_m = 60;        // MAP-TAGS 1.2
constexpr double approach_m = 30;     // a light so near to the ring belongs to it
constexpr double double_mini_m = 60;  // src/rules/kinds.txt
const std::uint64_t ring_kinds = bit(Kind::roundabout) | bit(Kind::multi_lane_roundabout) |
                                 bit(Kind::signal_roundabout) | bit(Kind::mini_roundabout);

struct Circle {
  std::vector<const Road*> roads;
  std::vector<Spot> points;
  Spot middle;
};

std::vector<Circle> circles(const Net& net) {
  std::vector<Circle> found;
  for (const Road& road : net.roads()) {
    if (!road.ring) continue;
    const auto touches = [&](const Circle& c) {
      return std::ranges::any_of(road.line->points,
                                 [&](Spot p) { return std::ranges::count(c.points, p) > 0; });
    };
    auto home = std::ranges::find_if(found, touches);
    if (home == found.end()) home = found.insert(found.end(), Circle{});
    home->roads.push_back(&road);
    for (const Spot p : road.line->points)
      if (std::ranges::count(home->points, p) == 0) home->points.push_back(p);
  }
  for (Circle& c : found) {
    double x = 0, y = 0;
    for (const Spot p : c.points) x += p.x(), y += p.y();
    const auto n = static_cast<double>(c.points.size());
    c.middle = spot(x / n, y / n);
  }
  return found;
}

/// Anticlockwise, as where one drives on the right.
bool drawn_wrongly(const Circle& c) {
  double area = 0;
  for (const Road* road : c.roads) {
    const std::vector<Spot>& line = road->line->points;
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
      area += (line[i].x() - c.middle.x()) * (line[i + 1].y() - c.middle.y()) -
              (line[i + 1].x() - c.middle.x()) * (line[i].y() - c.middle.y());
  }
  return area > 0;
}

/// A road at the ring: where, and which way traffic goes on it.
struct Leg {
  Spot at;
  Arm arm;
  bool in = false, out = false;
  double angle = 0;  // of the point, from the middle
};

std::vector<Leg> legs_of(const Net& net, const Circle& c) {
  std::vector<Leg> legs;
  for (const Spot p : c.points) {
    for (const Arm& arm : net.arms(p)) {
      const Road& road = net.road(arm);
      if (road.ring) continue;
      const bool out = arm.step > 0 ? road.along : road.against;
      const bool in = arm.step > 0 ? road.against : road.along;
      legs.push_back({p, arm, in, out, angle_of(c.middle, p)});
    }
  }
  std::ranges::sort(legs, {}, &Leg::angle);
  return legs;
}

bool meet_again(const Net& net, const Leg& a, const Leg& b) {
  const auto reach = [&](const Leg& leg) {
    std::vector<Spot> points{};
    const std::vector<Spot>& line = net.road(leg.arm).line->points;
    double metres = 0;
    for (std::size_t at = leg.arm.at;;) {
      const std::size_t next = at + static_cast<std::size_t>(leg.arm.step);
      if (next >= line.size() || (metres += apart(line[at], line[next])) > flare_m) return points;
      points.push_back(line[next]);
      at = next;
    }
  };
  const std::vector<Spot> mine = reach(a), other = reach(b);
  return std::ranges::any_of(mine, [&](Spot p) { return std::ranges::count(other, p) > 0; });
}

bool same_road(const Net& net, const Leg& a, const Leg& b) {
  const Road &x = net.road(a.arm), &y = net.road(b.arm);
  const auto same = [&](const char* key) {
    return !x.tag(key).empty() && x.tag(key) == y.tag(key);
  };
  return !x.two_way() && !y.two_way() && a.in != b.in && (same("name") || same("ref"));
}

struct Arms {
  std::size_t least = 0, most = 0;  // most: with service roads
  std::size_t entries = 0, lit_entries = 0;
  bool two_lanes = false;
};

/// Whether a light stands so near to the ring on the arm.
bool lit(const Net& net, const Leg& leg) {
  const std::vector<Spot>& line = net.road(leg.arm).line->points;
  double metres = 0;
  for (std::size_t at = leg.arm.at;;) {
    if (says(net.tags(line[at]), "highway", {"traffic_signals"})) return true;
    const std::size_t next = at + static_cast<std::size_t>(leg.arm.step);
    if (next >= line.size() || (metres += apart(line[at], line[next])) > approach_m) return false;
    at = next;
  }
}

/// Lanes into the ring that cars have; one of the buses' is none.
int car_lanes(const Road& road, bool along) {
  const bool for_buses = std::ranges::any_of(road.line->tags, [](const auto& tag) {
    return tag.first.starts_with("lanes:bus") || tag.first.starts_with("lanes:psv") ||
           tag.first.starts_with("bus:lanes") || tag.first.starts_with("psv:lanes") ||
           tag.first.starts_with("busway");
  });
  return lanes_of(road, along) - (for_buses ? 1 : 0);
}

Arms arms_of(const Net& net, const std::vector<Leg>& legs) {
  Arms arms;
  std::vector<std::size_t> group(legs.size());
  std::iota(group.begin(), group.end(), 0U);
  const auto alone = [&](std::size_t i) { return std::ranges::count(group, group[i]) == 1; };
  const auto join = [&](std::size_t i, std::size_t j) {
    const std::size_t from = group[i], to = group[j];
    std::ranges::replace(group, from, to);
  };
  for (std::size_t i = 0; i < legs.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (meet_again(net, legs[i], legs[j])) join(i, j);
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const std::size_t next = (i + 1) % legs.size();
    if (next != i && alone(i) && alone(next) && same_road(net, legs[i], legs[next])) join(i, next);
  }
  std::map<std::size_t, bool> is_service;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const Road& road = net.road(legs[i].arm);
    const auto known = is_service.try_emplace(group[i], true).first;
    known->second = known->second && road.service();
    if (!legs[i].in) continue;
    ++arms.entries;
    if (lit(net, legs[i])) ++arms.lit_entries;
    if (car_lanes(road, legs[i].arm.step < 0) >= 2) arms.two_lanes = true;
  }
  arms.most = is_service.size();
  arms.least = static_cast<std::size_t>(
      std::ranges::count_if(is_service, [](const auto& one) { return !one.second; }));
  return arms;
}

std::string arm_text(std::size_t least, std::size_t most) {
  const std::string text = "arms=" + std::to_string(least);
  return least == most ? text : text + "-" + std::to_string(most);
}

void tell_circle(const Net& net, const Circle& c, Rows& rows) {
  const Arms arms = arms_of(net, legs_of(net, c));
  const bool on_it = std::ranges::any_of(
      c.points, [&](Spot p) { return says(net.tags(p), "highway", {"traffic_signals"}); });
  const bool lanes =
      std::ranges::any_of(c.roads, [](const Road* r) { return lanes_of(*r, true) >= 2; });
  const bool over_island = says(c.roads.front()->line->tags, "central_island:traversable", {"yes"});
  const double within = apart(c.middle, c.points.front()) + 20;
  if (drawn_wrongly(c) || arms.least < 2 || !c.roads.front()->learner)
    return rows.may_at(ring_kinds, c.middle, within);
  const Kind kind = over_island ? Kind::mini_roundabout
                    : on_it || (arms.lit_entries > 0 && 2 * arms.lit_entries >= arms.entries)
                        ? Kind::signal_roundabout
                    : lanes || arms.two_lanes ? Kind::multi_lane_roundabout
                                              : Kind::roundabout;
  rows.must_at(kind, c.middle, within, arm_text(arms.least, arms.most));
}

bool joined_within(const Net& net, Spot from, Spot to, double metres) {
  if (apart(from, to) > metres) return false;
  return std::ranges::any_of(net.arms(from), [&](const Arm& arm) {
    const std::vector<Spot>& line = net.road(arm).line->points;
    double gone = 0;
    for (std::size_t at = arm.at;;) {
      const std::size_t next = at + static_cast<std::size_t>(arm.step);
      if (next >= line.size() || (gone += apart(line[at], line[next])) > metres) return false;
      if (line[next] == to) return true;
      at = next;
    }
  });
}

void tell_minis(const Net& net, Rows& rows) {
  std::vector<Spot> minis;
  for (const Spot p : net.tagged("highway"))
    if (says(net.tags(p), "highway", {"mini_roundabout"})) minis.push_back(p);
  for (const Spot p : minis) {
    std::size_t least = 0, most = 0;
    bool learner = false;
    for (const Arm& arm : net.arms(p)) {
      const Road& road = net.road(arm);
      learner = learner || (road.learner && !road.service());
      ++most;
      if (!road.service()) ++least;
    }
    const bool pair = std::ranges::any_of(minis, [&](Spot other) {
      return other != p && joined_within(net, p, other, double_mini_m);
    });
    const Kind kind = pair ? Kind::double_mini : Kind::mini_roundabout;
    if (learner && least >= 2)
      rows.must_at(kind, p, pair ? 70 : 15, pair ? "" : arm_text(least, most));
    else
      rows.may_at(bit(kind), p, 15);
  }
}

}  // namespace

void tell_rings(const Net& net, Rows& rows) {
  for (const Circle& c : circles(net)) tell_circle(net, c, rows);
  tell_minis(net, rows);
}

}  // namespace loopwright::county
