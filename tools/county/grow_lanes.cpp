// Lanes are walked like streets, in longer steps and with more room: from the roads that are there
// into open country, until they meet a road. Each lane offers starts for others.
// Why not a net over chance points: walked lanes bend, meet at three arms and keep away from roads
// beside them without any mending afterwards.
#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <numbers>
#include <utility>

#include "county/grow.hpp"
#include "county/grow_fill.hpp"
#include "county/grow_tags.hpp"

namespace loopwright::county {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double gap_m = 520;   // between lanes that run beside each other
constexpr double aims_m = 250;  // between places of a road that lanes may aim at
constexpr double nearest_aim_m = 600;
constexpr double farthest_aim_m = 3800;
constexpr double passing_m = 230;  // between passing places

class Lanes {
 public:
  Lanes(Ground& ground, const Quarter& country, Dice& dice)
      : ground_(ground),
        country_(country),
        dice_(dice),
        grain_(grain_of(longest_side(country.outline), 1.5, dice.next())) {}

  void grow() {
    const std::size_t lines = ground_.county().lines.size();
    for (std::size_t n = 0; n < lines; ++n)
      if (joinable(ground_.line(n), 2, true)) note_aims(ground_.line(n).points);
    for (std::size_t n = 0; n < lines; ++n)
      if (joinable(ground_.line(n), 2, true)) offer_along(n);
    while (!offers_.empty()) {
      const std::size_t pick = dice_.below(std::min<std::size_t>(offers_.size(), 9));
      const Start start = offers_[pick];
      offers_.erase(offers_.begin() + static_cast<std::ptrdiff_t>(pick));
      grow_one(start);
    }
  }

 private:
  void offer_along(std::size_t number) {
    const std::vector<Spot> points = ground_.line(number).points;
    const double size = length_m(points);
    for (const double side : {1.0, -1.0})
      for (double at_m = 40 + 0.7 * gap_m * dice_.share(); at_m < size - 40;
           at_m += gap_m * (0.35 + 0.5 * dice_.share())) {
        const Spot at = along(points, at_m);
        if (!inside(country_.outline, at)) continue;
        const Foot foot = nearest(points, at);
        const double run = angle_of(points[foot.segment], points[foot.segment + 1]);
        const double heading = run + side * pi / 2;
        for (int again = 0; again < 3; ++again)
          offers_.push_back({number, at, heading + 0.3 * (dice_.share() - 0.5)});
      }
  }

  void note_aims(const std::vector<Spot>& points) {
    for (double at_m = aims_m / 2; at_m < length_m(points); at_m += aims_m) {
      const Spot at = along(points, at_m);
      if (inside(country_.outline, at)) aims_.push_back(at);
    }
  }

  /// A place of a road ahead, at a distance that a lane goes.
  std::optional<Spot> aim_of(const Start& start) {
    for (int attempt = 0; attempt < 30 && !aims_.empty(); ++attempt) {
      const Spot aim = aims_[dice_.below(aims_.size())];
      const double away = apart(start.at, aim);
      if (away < nearest_aim_m || away > farthest_aim_m) continue;
      if (std::cos(angle_of(start.at, aim) - start.heading) > 0.5) return aim;
    }
    return std::nullopt;
  }

  Manner manner() {
    Manner m{.within = country_.outline, .grain = grain_};
    m.along_gap_m = m.across_gap_m = gap_m;
    m.follow = 0.12;
    m.wobble = 0.2;
    m.bow = 0.05;
    m.step_m = 40;
    m.shortest_m = 260;
    m.longest_m = 4000;
    m.join = 1;
    m.cross = 0.2;
    m.keep_m = 90;
    m.close_m = 38;
    m.may_close = dice_.below(12) == 0;
    m.rank = 2;
    m.fast = true;
    m.bridge = 0.7;
    m.level = 0.6;
    return m;
  }

  void grow_one(const Start& start) {
    const Spot at = ground_.would_share(start.line, start.at);
    const int arms = ground_.arms(at);
    Manner m = manner();
    m.aim = aim_of(start);
    if (!m.aim) return;
    if (arms == 1 || arms > 2 || ground_.junction_off(at, m.keep_m) < m.keep_m) return;
    const auto way = trace(ground_, m, start, dice_);
    if (way) lay_lane(*way);
  }

  Tags lane_tags() {
    Tags tags = country_.tags;
    add_national_limit(tags);
    tags["highway"] = "unclassified";
    const std::size_t kind = dice_.below(10);
    static constexpr std::array widths{"3.8", "4", "4.2", "4.5", "4.8", "5"};
    if (kind < 3) {
      tags["lanes"] = "1";
      tags["passing_places"] = "yes";
      if (kind == 0) tags["width"] = "3.2";
    } else if (kind < 8) {
      tags["width"] = widths[dice_.below(widths.size())];
    }
    return tags;
  }

  /// The parts before, on and after each bridge, one line each.
  void lay_lane(const Trace& way) {
    for (const Joint& joint : way.joints) ground_.share(joint.line, joint.at);
    for (const Spot place : way.crossings)
      ground_.county().node_tags[place] = {{"railway", "level_crossing"},
                                           {"crossing:barrier", "half"},
                                           {"crossing:light", "yes"},
                                           {"crossing:activation", "automatic"}};
    const Tags tags = lane_tags();
    std::size_t from = 0;
    for (const std::size_t bridge : way.bridges) {
      if (bridge > from) lay_part(way, from, bridge, tags, false);
      lay_part(way, bridge, bridge + 1, tags, true);
      from = bridge + 1;
    }
    if (from + 1 < way.points.size()) lay_part(way, from, way.points.size() - 1, tags, false);
  }

  void lay_part(const Trace& way, std::size_t from, std::size_t to, Tags tags, bool bridge) {
    Line line{.kind = LineKind::road};
    line.points.assign(way.points.begin() + static_cast<std::ptrdiff_t>(from),
                       way.points.begin() + static_cast<std::ptrdiff_t>(to) + 1);
    line.grown = true;
    line.quarter = country_.name;
    if (way.closed && to + 1 == way.points.size()) line.ends[1] = End::closed;
    if (bridge) {
      line.layer = 1;
      tags.erase("passing_places");
      tags.insert({{"bridge", "yes"}, {"layer", "1"}});
    } else {
      line.points = without_straight(line.points, way.joints);
      if (tags.contains("passing_places")) put_passing_places(line.points);
    }
    line.tags = std::move(tags);
    const std::size_t number = ground_.add(std::move(line));
    if (bridge) return;
    note_aims(ground_.line(number).points);
    offer_along(number);
  }

  void put_passing_places(std::vector<Spot>& points) {
    static constexpr std::array sides{"left", "right", "both"};
    for (double at_m = 90; at_m < length_m(points) - 60;
         at_m += passing_m * (0.7 + 0.6 * dice_.share())) {
      const Spot at = along(points, at_m);
      const std::size_t segment = nearest(points, at).segment;
      if (apart(points[segment], at) < 8 || apart(points[segment + 1], at) < 8) continue;
      points.insert(points.begin() + static_cast<std::ptrdiff_t>(segment) + 1, at);
      ground_.county().node_tags[at] = {{"highway", "passing_place"},
                                        {"passing_place", sides[dice_.below(sides.size())]}};
    }
  }

  Ground& ground_;
  const Quarter& country_;
  Dice& dice_;
  std::function<double(Spot)> grain_;
  std::deque<Start> offers_;
  std::vector<Spot> aims_;
};

}  // namespace

void grow_lanes(Drawing& county, const Quarter& ground, Dice& dice) {
  Ground known(county, ground.outline);
  Lanes(known, ground, dice).grow();
}

}  // namespace loopwright::county
