// Arms of a ring come from the rows of the area, turned round so that the entry's is the first. One that
// lies apart from the rest of its arm keeps its own place.
#include "draw/scene_arms.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::draw {
namespace {

namespace flag = road::piece_flag;

bool is_inside(const Scene& scene, PieceId piece) {
  return std::find(scene.inside.begin(), scene.inside.end(), piece) != scene.inside.end();
}

bool is_counted(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  return piece.road_class != road::RoadClass::service && (piece.flags & flag::no_access) == 0;
}

/// Traffic may go this way, whether or not a lesson may.
bool may_enter(const road::Roads& roads, StretchId leaving) {
  const bool one_way = (roads.piece(leaving).flags & flag::one_way) != 0;
  const auto legal = [&](StretchId stretch) {
    return (roads.stretch(stretch).flags &
            (road::stretch_flag::drivable | road::stretch_flag::cut_off)) != 0;
  };
  return !one_way || legal(leaving) || !legal(leaving.back());
}

std::span<const road::Arm> arm_rows(const road::Roads& roads, PlaceId place) {
  const road::Place& row = roads.places[place.index()];
  return roads.arms.subspan(row.arm_first, row.arms);
}

/// Where a road lies round the middle, so far out as the rows measure it.
double lies_deg(const road::Roads& roads, const Frame& frame, StretchId away) {
  constexpr double clear_m = 30;
  return angle_deg(along(follow(roads, frame, away, clear_m), clear_m));
}

/// The row's bearing is the mean of all roads of the arm; one that lies apart keeps its own place.
double place_deg(double of_row, double of_road) {
  constexpr double apart_deg = 20;
  return std::abs(heading_change_deg(of_row, of_road)) > apart_deg ? of_road : of_row;
}

/// The row of the arm that a stretch towards the place is part of: its own, or the one that lies
/// nearest to where it comes from (an arm of several ways in names the first of them).
std::size_t arm_row(const road::Roads& roads, const Scene& scene, StretchId in, StretchId out) {
  const auto rows = arm_rows(roads, scene.place);
  for (std::size_t i = 0; i < rows.size(); ++i)
    if ((in.known() && rows[i].in == in) || (out.known() && rows[i].out == out)) return i;
  const double lies = lies_deg(roads, scene.frame, in.known() ? in.back() : out);
  std::size_t nearest = 0;
  double least = 361;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double off =
        std::abs(heading_change_deg(lies, scene.frame.angle_of_bearing(rows[i].bearing_deg)));
    if (off < least) nearest = i, least = off;
  }
  return nearest;
}

}  // namespace

bool on_ring(const road::Roads& roads, StretchId stretch) {
  return (roads.piece(stretch).flags & flag::ring) != 0;
}

void add_ring_arms(const road::Roads& roads, double reach_m, Scene& scene) {
  const auto rows = arm_rows(roads, scene.place);
  const bool starts_on_it = on_ring(roads, scene.entry);
  const std::size_t first = starts_on_it ? 0 : arm_row(roads, scene, scene.entry, {});
  const std::size_t last = arm_row(roads, scene, {}, scene.exit);
  int counted = 0;
  std::vector<int> numbers(rows.size());
  for (std::size_t step = 1; step <= rows.size(); ++step) {
    const std::size_t i = (first + step) % rows.size();
    if (rows[i].is_public != 0 && rows[i].can_leave != 0) numbers[i] = ++counted;
  }
  for (std::size_t step = 0; step < rows.size(); ++step) {
    const std::size_t i = (first + step) % rows.size();
    const road::Arm& row = rows[i];
    SceneArm arm;
    arm.in = row.in, arm.out = row.out;
    arm.line = follow(roads, scene.frame, row.out.known() ? row.out : row.in.back(), reach_m);
    arm.place_deg = scene.frame.angle_of_bearing(row.bearing_deg);
    arm.counted = row.is_public != 0, arm.can_leave = row.can_leave != 0;
    arm.is_entry = !starts_on_it && i == first, arm.is_exit = i == last;
    if (arm.is_entry)
      arm.place_deg = place_deg(arm.place_deg, lies_deg(roads, scene.frame, scene.entry.back()));
    else if (arm.is_exit)
      arm.place_deg = place_deg(arm.place_deg, lies_deg(roads, scene.frame, scene.exit));
    arm.exit_number = starts_on_it ? 0 : numbers[i];
    scene.arms.push_back(std::move(arm));
  }
}

void add_arms(const road::Roads& roads, double reach_m, Scene& scene) {
  for (const NodeId node : scene.nodes) {
    for (const StretchId away : roads.leaving(node)) {
      const bool aisle = (roads.piece(away).flags & flag::minor_service) != 0;
      if (is_inside(scene, away.piece()) || (aisle && away != scene.exit)) continue;
      SceneArm arm;
      arm.in = away.back(), arm.out = away;
      arm.line = follow(roads, scene.frame, away, reach_m);
      constexpr double course_m = 20;
      arm.place_deg = angle_deg(along(arm.line, course_m) - arm.line.front());
      arm.counted = is_counted(roads, away), arm.can_leave = may_enter(roads, away);
      arm.is_entry = away == scene.entry.back(), arm.is_exit = away == scene.exit;
      const auto at = arm.is_entry ? scene.arms.begin() : scene.arms.end();
      scene.arms.insert(at, std::move(arm));
    }
  }
}

double up_of(const road::Roads& roads, const Scene& scene) {
  const bool round = scene.form == Form::ring || scene.form == Form::mini;
  if (!round || on_ring(roads, scene.entry)) return road::bearing_in_deg(roads, scene.entry);
  const road::Arm& row = arm_rows(roads, scene.place)[arm_row(roads, scene, scene.entry, {})];
  return place_deg(row.bearing_deg, lies_deg(roads, scene.frame, scene.entry.back())) + 180;
}

}  // namespace loopwright::draw
