// 1. Where an arm lies round the middle is what the sign before a roundabout draws; how its road
//    runs 30 to 60 m out is what a driver feels. A bend just behind the ring moves either of them
//    alone by as much as a road: the turn is the mean of both.
// 2. Turns that come out beyond a half circle, as at hairpins, are told by the driving order.
// 3. Within 45 degrees is ahead (ours). But one road of a roundabout lies ahead, seldom two: of
//    several counted exits within 45 degrees, one that is over 20 degrees off is left or right when
//    another is plainly nearer to straight on (by 15 degrees), or is about as near and this one is
//    the first exit of all, on the near side, or the last, on the far side. (Ours, after Highway
//    Code rule 186, which knows the first exit, the last ones, and those between.)
// 4. Back out by the same arm is round.
#include "ring_movement.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace loopwright::mark {
namespace {

constexpr double ahead_deg = 45;
constexpr double plainly_ahead_deg = 20;
constexpr double plainly_nearer_deg = 15;

/// The same direction, told nearest to another.
double nearest_to(double wanted_deg, double degrees) {
  return wanted_deg + heading_change_deg(wanted_deg, degrees);
}

}  // namespace

RingMovements::RingMovements(const Draft& draft, const road::Roads& roads, Point middle,
                             const std::vector<JunctionArm>& arms)
    : side_(draft.side()) {
  for (const JunctionArm& arm : arms) {
    Course course;
    course.place_deg = place_of_arm_deg(roads, middle, arm);
    if (arm.can_enter()) course.coming_deg = bearing_of_arm(roads, arm.in().back()) + 180;
    if (arm.can_leave()) course.leaving_deg = bearing_of_arm(roads, arm.out());
    course.counted = arm.is_exit();
    arms_.push_back(course);
  }
}

double RingMovements::turn_deg(std::size_t from, std::size_t to) const {
  const std::size_t count = arms_.size();
  const double driven = static_cast<double>((to + count - from) % count) / double(count);
  const double by_order = side_ == Side::left ? driven * 360 - 180 : 180 - driven * 360;
  const Course& in = arms_[from];
  const Course& out = arms_[to];
  const double by_place = nearest_to(by_order, out.place_deg - in.place_deg - 180);
  const double by_road = nearest_to(by_place, out.leaving_deg - in.coming_deg);
  return std::clamp((by_place + by_road) / 2, -180.0, 180.0);
}

/// The counted exits in driving order, without the arm one came by.
std::vector<std::size_t> RingMovements::exits_from(std::size_t from) const {
  std::vector<std::size_t> exits;
  for (std::size_t step = 1; step < arms_.size(); ++step) {
    const std::size_t at = (from + step) % arms_.size();
    if (arms_[at].counted) exits.push_back(at);
  }
  return exits;
}

bool RingMovements::gives_way_to_another(std::size_t from, std::size_t to) const {
  const double turn = turn_deg(from, to);
  if (!arms_[to].counted || std::abs(turn) <= plainly_ahead_deg) return false;
  const std::vector<std::size_t> exits = exits_from(from);
  const bool to_near_side = (turn < 0) == (side_ == Side::left);
  const bool is_outermost = to == (to_near_side ? exits.front() : exits.back());
  return std::ranges::any_of(exits, [&](std::size_t other) {
    const double other_deg = std::abs(turn_deg(from, other));
    const double nearer_deg = std::abs(turn) - other_deg;
    if (other == to || other_deg > ahead_deg) return false;
    return nearer_deg >= plainly_nearer_deg ||
           (is_outermost && std::abs(nearer_deg) < plainly_nearer_deg);
  });
}

road::Movement RingMovements::of(std::size_t from, std::size_t to) const {
  assert(from < arms_.size() && to < arms_.size());
  if (from == to) return road::Movement::round;
  const double turn = turn_deg(from, to);
  const bool is_ahead = std::abs(turn) <= ahead_deg && !gives_way_to_another(from, to);
  if (is_ahead) return road::Movement::ahead;
  return turn < 0 ? road::Movement::left : road::Movement::right;
}

}  // namespace loopwright::mark
