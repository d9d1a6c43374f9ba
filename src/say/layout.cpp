// Method: the way taken is compared with the other road that lies nearest ahead.
// 1. That one bends off much less than ours: we turn off it.
// 2. About as much, all within sight ahead: the road divides, if ours is the left or right edge, or the middle of three.
// 3. Ours lies ahead otherwise: it is followed; or joined, where we give way and it bears off.
// 4. Ours bends: by itself, or with the main road; or no road lies ahead, and ours ends.
#include "say/layout.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace loopwright::say {
namespace {

using road::Movement;

/// Another road is plainly ahead when ours bends off at least this much more; within it the road
/// divides. Our judgement, the same as for what goes without saying.
constexpr double plain_by_deg = 30;
/// Ahead is up to this change of heading (DEVELOPERS.md).
constexpr double ahead_deg = 45;
/// Both ways of a road that divides lie within this of ahead; wider, and the road ends.
constexpr double divides_deg = 75;
/// Joining a road less sharply than this is following it.
constexpr double bears_deg = 20;

const Arm* nearest_ahead(const Junction& junction, Seen seen) {
  const Arm* nearest = nullptr;
  for (const Arm& arm : junction.others)
    if (arm.seen == seen &&
        (nearest == nullptr || std::abs(arm.angle_deg) < std::abs(nearest->angle_deg)))
      nearest = &arm;
  return nearest;
}

Movement side_of(double angle_deg) {
  return angle_deg < 0 ? Movement::left : Movement::right;
}

/// Where ours lies among the roads that divide: the side to which no other does, ahead with one on either side, none with
/// more.
Movement share_of(const Junction& junction) {
  int left = 0, right = 0;
  for (const Arm& arm : junction.others) {
    if (arm.seen != Seen::road || std::abs(arm.angle_deg) > divides_deg) continue;
    ++(arm.angle_deg < junction.angle_deg ? left : right);
  }
  if (left == 0) return Movement::left;
  if (right == 0) return Movement::right;
  return left == 1 && right == 1 ? Movement::ahead : Movement::none;
}

bool takes_slip_road(const road::Roads& roads, const Junction& junction, const Arm& ahead) {
  return is_link(roads, junction.exit) && !is_link(roads, junction.entry) &&
         !is_link(roads, ahead.leaving);
}

/// The layouts in which another road lies ahead; nothing when none of them fits.
Layout with_road_ahead(const road::Roads& roads, const Junction& junction, const Arm& ahead) {
  const double taken = std::abs(junction.angle_deg);
  const double other = std::abs(ahead.angle_deg);
  const Movement side = side_of(junction.angle_deg - ahead.angle_deg);
  const bool plainly = other <= ahead_deg && taken >= other + plain_by_deg;
  if (other <= ahead_deg && takes_slip_road(roads, junction, ahead))
    return {Shape::slip_road, side, &ahead};
  if (plainly && taken > ahead_deg && follows_main_road(roads, junction))
    return {Shape::main_bends, side, &ahead};
  if (plainly) return {Shape::turns_off, side, &ahead};
  const Movement share = share_of(junction);
  // Wider apart, with neither way ahead, our road ends.
  const bool forward = std::min(taken, other) <= ahead_deg && other < taken + plain_by_deg;
  if (forward && share != Movement::none) return {Shape::divides, share, &ahead};
  return {};
}

/// A small road taken from a bigger one; none of these shapes when it isn't, or when there are no
/// bigger ones that go on.
std::optional<Layout> into_small_road(const road::Roads& roads, const Junction& junction) {
  if (!is_small_road(roads, junction.exit) || is_small_road(roads, junction.entry)) return {};
  const Arm* on = nullptr;
  int roads_there = 0;
  for (const Arm& arm : junction.others) {
    if (arm.seen != Seen::road || is_service(roads, arm.leaving)) continue;
    ++roads_there;
    if (on == nullptr || std::abs(arm.angle_deg) < std::abs(on->angle_deg)) on = &arm;
  }
  if (on == nullptr) return {};
  const Movement side = side_of(junction.angle_deg - on->angle_deg);
  if (roads_there == 1 || std::abs(on->angle_deg) <= ahead_deg)
    return Layout{Shape::small_road, side, on};
  if (std::abs(junction.angle_deg) <= ahead_deg) return Layout{Shape::small_ahead, side, on};
  return {};
}

}  // namespace

Layout layout_of(const road::Roads& roads, const Junction& junction) {
  const Arm* ahead = nearest_ahead(junction, Seen::road);
  const Arm* shut = nearest_ahead(junction, Seen::no_entry);
  const double taken = std::abs(junction.angle_deg);
  const Movement side = side_of(junction.angle_deg);
  if (const auto small = into_small_road(roads, junction)) return *small;
  if (ahead != nullptr) {
    const Layout layout = with_road_ahead(roads, junction, *ahead);
    if (layout.ahead != nullptr) return layout;
  }
  if (taken <= ahead_deg) {
    const bool alone = ahead == nullptr || std::abs(ahead->angle_deg) > ahead_deg;
    const bool joins = alone && gives_way(junction) && taken > bears_deg;
    if (joins) return {Shape::joins, side, ahead};
    if (bends_away(roads, junction)) return {Shape::leaves_bend, side, ahead};
    return {gives_way(junction) ? Shape::meets_main : Shape::goes_ahead, side, ahead};
  }
  if (ahead == nullptr && shut == nullptr) return {Shape::bends, side, ahead};
  if (ahead != nullptr && follows_main_road(roads, junction))
    return {Shape::main_bends, side, ahead};
  if (shut != nullptr && std::abs(shut->angle_deg) <= ahead_deg)
    return {Shape::at_shut, side, shut};
  return {Shape::ends, side, ahead};
}

std::vector<Arm> roads_beside(const Junction& junction, const Layout& layout) {
  std::vector<Arm> beside;
  for (const Arm& arm : junction.others) {
    if (arm.seen != Seen::road || &arm == layout.ahead) continue;
    if (layout.ahead == nullptr || side_of(arm.angle_deg - layout.ahead->angle_deg) == layout.side)
      beside.push_back(arm);
  }
  return beside;
}

bool is_plain_cross(const Junction& junction) {
  std::vector<Movement> ways{movement_of(junction.angle_deg)};
  for (const Arm& arm : junction.others)
    if (arm.seen != Seen::not_counted) ways.push_back(movement_of(arm.angle_deg));
  std::sort(ways.begin(), ways.end());
  return ways == std::vector{Movement::left, Movement::ahead, Movement::right};
}

}  // namespace loopwright::say
