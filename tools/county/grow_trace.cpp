// A walk in steps. Each step turns a little (towards the grain, by a steady bow, by chance), looks
// ahead for something to meet, and sideways for streets that run beside it.
#include "county/grow_trace.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace loopwright::county {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double look_m = 24;           // beyond the next step, for something to meet
constexpr double beyond_m = 110;        // how far outside its outline a street may reach a road
constexpr double least_square = 0.899;  // sine of 64 degrees: 60 to 120, and a little for rounding
constexpr double parallel = 0.72;       // cosine from which a street counts as running beside
constexpr double largest_bend = 0.6;    // radians, at the last point before a join
constexpr double most_turned = 2.9;     // radians, off the first heading
constexpr double steep_over = 0.75;     // sine of the least angle at which rails are crossed
constexpr double half_rails_m = 14;     // of a bridge
constexpr double half_river_m = 17;
constexpr double shore_m = 16;  // from rails, water and the edges of areas

double between(double from, double to) {
  return std::remainder(to - from, 2 * pi);
}

Spot ahead_of(Spot at, double heading, double metres) {
  return spot(at.x() + metres * std::cos(heading), at.y() + metres * std::sin(heading));
}

bool is_way(const Line& line) {
  return line.kind <= LineKind::service;
}

class Walk {
 public:
  Walk(const Ground& ground, const Manner& manner, const Start& start, Dice& dice)
      : ground_(ground),
        manner_(manner),
        dice_(dice),
        at_(start.at),
        heading_(start.heading),
        first_heading_(start.heading),
        joint_(start.at) {
    way_.points.push_back(at_);
    if (start.line != Ground::no_line) way_.joints.push_back({start.line, at_});
    bow_ = manner.bow * (2 * dice.share() - 1);
  }

  std::optional<Trace> go() {
    while (step()) {
    }
    const double size = length_m(way_.points);
    if (way_.points.size() < 2 || size < manner_.shortest_m) return std::nullopt;
    if (way_.closed && !manner_.may_close) return std::nullopt;
    if (way_.bridges.empty()) way_.points = without_straight(way_.points, way_.joints);
    return std::move(way_);
  }

 private:
  bool step() {
    turn();
    const Spot next = ahead_of(at_, heading_, manner_.step_m);
    const auto hit = ground_.first_hit(at_, ahead_of(at_, heading_, manner_.step_m + look_m));
    if (hit) return meet(*hit);
    walked_m_ += manner_.step_m;
    if (!(inside(manner_.within, next) || road_ahead()) || walked_m_ > manner_.longest_m ||
        crowded(next) || turns_back(next))
      return close();
    at_ = next;
    way_.points.push_back(next);
    return true;
  }

  /// Beyond the outline a street goes on only to a road that it can join.
  bool road_ahead() const {
    const auto hit = ground_.first_hit(at_, ahead_of(at_, heading_, beyond_m));
    return hit && hit->line != Ground::no_line &&
           joinable(ground_.line(hit->line), manner_.rank, manner_.fast);
  }

  void turn() {
    double change = bow_ + manner_.wobble * (2 * dice_.share() - 1);
    if (way_.points.size() > 1) change += manner_.follow * off_grain();
    heading_ += std::clamp(change, -0.45, 0.45);
  }

  /// To the aim, or to the nearer of the grain's four directions.
  double off_grain() const { return std::remainder(manner_.grain(at_) - heading_, pi / 2); }

  double side_gap_m() const {
    const double off = std::abs(std::remainder(manner_.grain(at_) - heading_, pi));
    return off < pi / 4 ? manner_.along_gap_m : manner_.across_gap_m;
  }

  bool crowded(Spot next) const {
    const double gap = 0.55 * side_gap_m();
    const double since = apart(joint_, next);
    for (const Hit& hit : ground_.around(next, std::max(gap, manner_.close_m))) {
      if (hit.line == Ground::no_line || !is_way(ground_.line(hit.line))) {
        if (hit.away_m < shore_m) return true;
        continue;
      }
      const double side = std::abs(std::sin(between(heading_, angle_of(next, hit.at))));
      const bool beside = std::abs(std::cos(between(heading_, hit.angle))) > parallel;
      if (beside && side > parallel && hit.away_m < std::min(gap, 0.8 * since)) return true;
      const bool led_from = since < 2 * gap && hit.away_m > 0.55 * since;  // it leads away from it
      if (!led_from && hit.away_m < manner_.close_m) return true;
    }
    return ground_.in_area(next);
  }

  bool turns_back(Spot next) const {
    if (std::abs(heading_ - first_heading_) > most_turned) return true;
    for (std::size_t i = 0; i + 4 < way_.points.size(); ++i)
      if (apart(way_.points[i], next) < 2 * manner_.close_m) return true;
    return false;
  }

  /// Something lies ahead: join it, perhaps go on beyond it, or stop short of it.
  bool meet(const Hit& hit) {
    if (hit.line != Ground::no_line && !is_way(ground_.line(hit.line))) return over(hit) || close();
    const bool wanted = hit.line != Ground::no_line &&
                        joinable(ground_.line(hit.line), manner_.rank, manner_.fast) &&
                        chance(manner_.join);
    if (!wanted) return close();
    for (const Spot place : {hit.at, nearest(ground_.line(hit.line).points, at_).at}) {
      const Spot shared = ground_.would_share(hit.line, place);
      if (!may_join(hit.line, shared)) continue;
      way_.points.push_back(shared);
      way_.joints.push_back({hit.line, shared});
      return goes_on(shared);
    }
    return close();
  }

  /// A dead end, or a junction already.
  bool ends_or_full(Spot place) const {
    const int arms = ground_.arms(place);
    return arms == 1 || arms > 2;
  }

  /// Rails or water lie ahead: a bridge over them, or a level crossing.
  bool over(const Hit& hit) {
    if (std::abs(std::sin(heading_ - hit.angle)) < steep_over) return false;
    const bool bridge = chance(manner_.bridge);
    const LineKind kind = ground_.line(hit.line).kind;
    if (!bridge && !(kind == LineKind::rail && chance(manner_.level))) return false;
    const double half = kind == LineKind::water ? half_river_m : half_rails_m;
    const Spot from = ahead_of(at_, heading_, hit.away_m - half);
    const Spot to = ahead_of(at_, heading_, hit.away_m + half);
    if (hit.away_m < half + 10 || !only_crosses(hit, from, to, bridge)) return false;
    way_.points.push_back(from);
    if (bridge) {
      way_.bridges.push_back(way_.points.size() - 1);
    } else {
      const Spot level = ground_.would_share(hit.line, hit.at);
      way_.points.push_back(level);
      way_.joints.push_back({hit.line, level});
      way_.crossings.push_back(level);
    }
    way_.points.push_back(to);
    walked_m_ += apart(at_, to);
    at_ = to;
    return true;
  }

  bool chance(double share) { return dice_.share() < share; }

  /// Whether between two places nothing lies but the one rail, or rails and water for a bridge, and
  /// there is room beyond.
  bool only_crosses(const Hit& hit, Spot from, Spot to, bool bridge) const {
    const Spot room = ahead_of(to, heading_, 2 * manner_.close_m);
    if (!inside(manner_.within, room)) return false;
    Spot at = from;
    while (const auto next = ground_.first_hit(at, room)) {
      if (next->line == Ground::no_line || is_way(ground_.line(next->line))) return false;
      if ((!bridge && next->line != hit.line) ||
          apart(next->at, to) + apart(from, next->at) > apart(from, to) + 0.1)
        return false;
      at = next->at;
    }
    return true;
  }

  bool may_join(std::size_t line, Spot shared) const {
    const double off = apart(at_, shared);
    if (off < 6 || off > manner_.step_m + look_m + 4 || ends_or_full(shared)) return false;
    const double to = angle_of(at_, shared);
    if (way_.points.size() > 1 && std::abs(between(heading_, to)) > largest_bend) return false;
    if (way_.points.size() == 1 && std::abs(between(first_heading_, to)) > 0.2) return false;
    const std::vector<Spot>& points = ground_.line(line).points;
    const Foot found = nearest(points, shared);
    const std::size_t before = found.segment;
    if (!square_on(to, angle_of(points[before], points[before + 1]))) return false;
    if (shared == points[before + 1] && before + 2 < points.size() &&
        !square_on(to, angle_of(points[before + 1], points[before + 2])))
      return false;
    if (ground_.junction_off(shared, manner_.keep_m) < manner_.keep_m) return false;
    for (const Joint& other : way_.joints)
      if (apart(other.at, shared) < manner_.keep_m) return false;
    const auto hit = ground_.first_hit(at_, shared);
    return !hit || hit->away_m > off - 1;
  }

  bool goes_on(Spot shared) {
    heading_ = angle_of(at_, shared);
    const Spot beyond = ahead_of(shared, heading_, 2 * manner_.step_m);
    const bool on = chance(manner_.cross) && inside(manner_.within, beyond) &&
                    !ground_.first_hit(shared, beyond);
    if (!on) return false;
    walked_m_ += apart(at_, shared);
    at_ = joint_ = shared;
    const Spot next = ahead_of(shared, heading_, manner_.step_m);
    if (crowded(next)) return false;
    at_ = next;
    way_.points.push_back(next);
    return true;
  }

  /// Ends here, far enough from everything to turn round.
  bool close() {
    way_.closed = true;
    while (way_.points.size() > 1 && way_.points.back() != joint_ && tight(way_.points.back()))
      way_.points.pop_back();
    if (way_.points.back() == joint_) way_.closed = way_.points.size() == 1;
    return false;
  }

  bool tight(Spot end) const {
    for (const Hit& hit : ground_.around(end, manner_.close_m))
      if (apart(end, joint_) * 0.8 > hit.away_m) return true;
    return false;
  }

  const Ground& ground_;
  const Manner& manner_;
  Dice& dice_;
  Trace way_;
  Spot at_;
  double heading_;
  double first_heading_;
  Spot joint_;  // the last one
  double bow_ = 0;
  double walked_m_ = 0;
};

}  // namespace

bool joinable(const Line& line, int own, bool fast) {
  if (line.kind != LineKind::road || line.layer != 0) return false;
  const int theirs = rank(line);
  if (theirs < own || theirs > 5) return false;
  const auto is = [&](const char* key, const char* value) {
    const auto found = line.tags.find(key);
    return found != line.tags.end() && found->second == value;
  };
  const std::string& highway = line.tags.at("highway");
  if (highway.ends_with("_link") || is("dual_carriageway", "yes") || is("bridge", "yes") ||
      is("access", "private") || is("motor_vehicle", "no") || (is("oneway", "yes") && theirs > 3))
    return false;
  return fast ||
         !(is("maxspeed", "60 mph") || is("maxspeed", "50 mph") || is("maxspeed", "70 mph"));
}

bool square_on(double heading, double line_angle) {
  return std::abs(std::sin(heading - line_angle)) >= least_square;
}

std::vector<Spot> without_straight(const std::vector<Spot>& points,
                                   const std::vector<Joint>& keep) {
  std::vector<Spot> out{points.front()};
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    const bool joint =
        std::any_of(keep.begin(), keep.end(), [&](const Joint& j) { return j.at == points[i]; });
    if (joint || nearest(std::array{out.back(), points[i + 1]}, points[i]).off_m > 0.4)
      out.push_back(points[i]);
  }
  out.push_back(points.back());
  return out;
}

std::optional<Trace> trace(const Ground& ground, const Manner& manner, const Start& start,
                           Dice& dice) {
  Start from = start;
  if (start.line != Ground::no_line) from.at = ground.would_share(start.line, start.at);
  return Walk(ground, manner, from, dice).go();
}

std::size_t lay(Ground& ground, const Trace& way, Line line) {
  for (const Joint& joint : way.joints) ground.share(joint.line, joint.at);
  line.points = way.points;
  line.grown = true;
  if (way.closed) {
    line.ends[1] = End::turning_circle;
    ground.county().node_tags[way.points.back()].emplace("highway", "turning_circle");
  }
  return ground.add(std::move(line));
}

}  // namespace loopwright::county
