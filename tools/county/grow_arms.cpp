#include "county/grow_arms.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "county/grow_limit.hpp"

namespace loopwright::county {
namespace {

constexpr double pi = std::numbers::pi;
constexpr std::size_t arms_wanted = 5;
constexpr double widest_gap = 0.9;  // radians between two arms that needs no other between
constexpr double same_arm = 0.35;
constexpr double widest_link = 2.4;  // radians; a distributor across more than this isn't drawn
constexpr double loop_keep_m = 20;   // between the loop's corners and what it crosses

double round_angle(Spot middle, Spot at) {
  const double angle = angle_of(middle, at);
  return angle < 0 ? angle + 2 * pi : angle;
}

}  // namespace

Tags Arms::road_tags(const char* highway) const {
  Tags tags = town_.tags;
  tags["highway"] = highway;
  return tags;
}

std::vector<Arms::Crossing> Arms::crossings(double radius_m) const {
  std::vector<Crossing> found;
  constexpr int corners = 48;
  for (int i = 0; i < corners; ++i) {
    const Spot a = on_circle(town_.middle, radius_m, 2 * pi * i / corners);
    const Spot b = on_circle(town_.middle, radius_m, 2 * pi * (i + 1) / corners);
    auto hit = ground_.first_hit(a, b);
    for (; hit; hit = ground_.first_hit(hit->at, b)) {
      if (hit->line == Ground::no_line || !through(ground_.line(hit->line))) continue;
      if (square_on(hit->angle, angle_of(a, b)))
        found.push_back({round_angle(town_.middle, hit->at), hit->line, hit->at});
    }
  }
  std::sort(found.begin(), found.end(),
            [](const Crossing& x, const Crossing& y) { return x.angle < y.angle; });
  return found;
}

std::vector<double> Arms::angles(double radius_m) const {
  std::vector<double> out;
  for (const Crossing& crossing : crossings(radius_m))
    if (out.empty() || (crossing.angle - out.back() > same_arm &&
                        crossing.angle - out.front() < 2 * pi - same_arm))
      out.push_back(crossing.angle);
  return out;
}

void Arms::draw_loop(double radius_m) {
  std::vector<Crossing> crossed = crossings(radius_m);
  const bool major = std::any_of(crossed.begin(), crossed.end(), [&](const Crossing& crossing) {
    return rank(ground_.line(crossing.line)) > 3;
  });
  if (crossed.empty()) {
    ground_.county().troubles.push_back("town " + town_.name +
                                        ": no road passes its middle; draw one through it");
    return;
  }
  std::vector<Spot> corners;
  constexpr int steps = 14;
  for (Crossing& crossing : crossed) {
    crossing.at = ground_.would_share(crossing.line, crossing.at);
    ground_.share(crossing.line, crossing.at);
    ground_.county().node_tags[crossing.at].emplace("highway", "traffic_signals");
    corners.push_back(crossing.at);
  }
  for (int i = 0; i < steps; ++i) {
    const Spot corner =
        on_circle(town_.middle, radius_m * (0.97 + 0.06 * dice_.share()), 2 * pi * i / steps);
    if (ground_.clear(corner, loop_keep_m)) corners.push_back(corner);
  }
  std::sort(corners.begin(), corners.end(), [&](Spot a, Spot b) {
    return round_angle(town_.middle, a) > round_angle(town_.middle, b);  // clockwise
  });
  if (corners.size() < 6) return;
  // Three streets, so that each has its own name.
  const std::size_t third = corners.size() / 3;
  corners.push_back(corners.front());
  const std::array cuts{std::size_t{0}, third, 2 * third, corners.size() - 1};
  for (std::size_t part = 0; part < 3; ++part) {
    Line line{.kind = LineKind::road};
    line.points.assign(corners.begin() + static_cast<std::ptrdiff_t>(cuts[part]),
                       corners.begin() + static_cast<std::ptrdiff_t>(cuts[part + 1]) + 1);
    line.tags = road_tags(major ? "secondary" : "tertiary");
    line.tags["oneway"] = "yes";
    line.tags["lanes"] = "2";
    line.grown = true;
    line.quarter = town_.name + " centre";
    ground_.add(std::move(line));
  }
  loop_m_ = radius_m;
}

void Arms::draw_roads_out() {
  std::vector<double> tried;
  for (std::size_t attempt = 0; attempt < arms_wanted; ++attempt) {
    std::vector<double> taken = angles(0.6 * town_.reach_m);
    if (taken.size() >= arms_wanted) return;
    taken.insert(taken.end(), tried.begin(), tried.end());
    std::sort(taken.begin(), taken.end());
    double best = 2 * pi * dice_.share();
    double gap = taken.empty() ? 2 * pi : 0;
    for (std::size_t i = 0; i < taken.size(); ++i) {
      const double next = i + 1 < taken.size() ? taken[i + 1] : taken.front() + 2 * pi;
      if (next - taken[i] > gap) {
        gap = next - taken[i];
        best = taken[i] + gap * (0.42 + 0.16 * dice_.share());
      }
    }
    if (gap < widest_gap) return;
    best = std::fmod(best, 2 * pi);
    tried.push_back(best);
    draw_road_out(best);
  }
}

void Arms::draw_road_out(double angle) {
  const Spot toward = on_circle(town_.middle, std::max(loop_m_, 60.0), angle);
  const auto near = ground_.nearest(toward, 140, [](const Line& line) {
    return line.kind == LineKind::road && rank(line) >= 3 && line.layer == 0;
  });
  if (!near) return;
  const Spot at = ground_.would_share(near->line, near->at);
  if (ground_.arms(at) > 2 || ground_.arms(at) == 1 || ground_.junction_off(at, 20) < 20) return;
  Manner manner{.within = outline_, .grain = [angle](Spot) { return angle; }};
  manner.along_gap_m = manner.across_gap_m = 180;
  manner.follow = 0.25;
  manner.wobble = 0.1;
  manner.step_m = 30;
  manner.aim = on_circle(town_.middle, 3 * town_.reach_m, angle);
  manner.shortest_m = 0.35 * town_.reach_m;
  manner.longest_m = 2 * town_.reach_m;
  manner.join = 1;
  manner.cross = 0;
  manner.rank = 3;
  manner.fast = true;
  const double out = std::abs(std::remainder(near->angle + pi / 2 - angle, 2 * pi)) < pi / 2
                         ? near->angle + pi / 2
                         : near->angle - pi / 2;
  const auto way = trace(ground_, manner, {near->line, at, out}, dice_);
  if (!way) return;
  Line line{.kind = LineKind::road};
  line.tags = road_tags("tertiary");
  line.quarter = town_.name;
  lay(ground_, *way, std::move(line));
}

void Arms::draw_distributor(double radius_m) {
  std::vector<Crossing> stops;
  for (const Crossing& crossing : crossings(radius_m)) {
    const Spot at = ground_.would_share(crossing.line, crossing.at);
    const bool near = !stops.empty() && crossing.angle - stops.back().angle < same_arm;
    const int arms = ground_.arms(at);
    if (!near && (arms == 0 || arms == 2) && ground_.junction_off(at, 25) >= 25 &&
        joinable(ground_.line(crossing.line), 3, true))
      stops.push_back({crossing.angle, crossing.line, at});
  }
  for (std::size_t i = 0; stops.size() > 1 && i < stops.size(); ++i)
    draw_link(stops[i], stops[(i + 1) % stops.size()], radius_m);
}

void Arms::draw_link(const Crossing& from, const Crossing& to, double radius_m) {
  const double turn = std::fmod(to.angle - from.angle + 2 * pi, 2 * pi);
  if (turn > widest_link || turn < same_arm) return;
  std::vector<Spot> through{from.at};
  const int steps = std::max(2, static_cast<int>(turn * radius_m / 160));
  for (int i = 1; i < steps; ++i) {
    const double off = radius_m * (0.95 + 0.1 * dice_.share());
    through.push_back(on_circle(town_.middle, off, from.angle + turn * i / steps));
  }
  through.push_back(to.at);
  const std::vector<Spot> curve = bend(through);
  for (std::size_t i = 0; i + 1 < curve.size(); ++i) {
    const auto hit = ground_.first_hit(curve[i], curve[i + 1]);
    const bool arrives = hit && i + 2 == curve.size() && apart(hit->at, to.at) < 1;
    if ((hit && !arrives) || ground_.in_area(curve[i])) return;
  }
  Trace way{.points = curve, .joints = {{from.line, from.at}, {to.line, to.at}}};
  Line line{.kind = LineKind::road};
  line.tags = road_tags("tertiary");
  line.quarter = town_.name;
  lay(ground_, way, std::move(line));
  for (const Spot end : {from.at, to.at})
    ground_.county().node_tags[end] = {{"highway", "mini_roundabout"}, {"direction", "clockwise"}};
}

}  // namespace loopwright::county
