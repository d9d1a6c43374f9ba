// 1. Of the chances that lead from the entry to the exit the one that says most of the place is
//    taken: ring, mini, level crossing, lights, crossroads, staggered, any other.
// 2. The middle is the place's, or that of the nodes passed. Up is the way from the entry's arm to the
//    middle of a ring, the heading of the entry's last metres elsewhere: as the words count turns.
// 3. Arms of a ring come from the rows of the area, turned round so that the entry's is the first.
#include "draw/scene.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace loopwright::draw {
namespace {

using road::Kind;
namespace flag = road::piece_flag;

template <class T>
bool holds(const std::vector<T>& all, const T& one) {
  return std::find(all.begin(), all.end(), one) != all.end();
}

int order_of(Kind kind) {
  if (road::meets(kind, Kind::roundabout)) return 0;
  if (road::meets(kind, Kind::mini_roundabout)) return 1;
  constexpr std::array told{Kind::level_crossing, Kind::signals, Kind::crossroads,
                            Kind::staggered_junction};
  const auto* const found = std::find(told.begin(), told.end(), kind);
  return 2 + static_cast<int>(found - told.begin());
}

const road::Chance* chance_between(const road::Roads& roads, StretchId entry, StretchId exit) {
  const road::Chance* best = nullptr;
  for (const road::Chance& chance : roads.chances_from(entry)) {
    if (chance.exit != exit || road::form_of(chance.kind) != road::KindForm::junction) continue;
    if (best == nullptr || order_of(chance.kind) < order_of(best->kind)) best = &chance;
  }
  return best;
}

bool on_ring(const road::Roads& roads, StretchId stretch) {
  return (roads.piece(stretch).flags & flag::ring) != 0;
}

/// The ring a piece is part of; none when no roundabout was made of it.
PlaceId ring_of(const road::Roads& roads, PieceId piece) {
  for (std::size_t row = 0; row < roads.places.size(); ++row) {
    if (!road::meets(roads.places[row].kind, Kind::roundabout)) continue;
    const auto pieces = roads.pieces_of(PlaceId{row});
    if (std::find(pieces.begin(), pieces.end(), piece) != pieces.end()) return PlaceId{row};
  }
  return {};
}

Form form_of(const road::Roads& roads, const Scene& scene) {
  if (scene.exit == scene.entry.back() && scene.chance == nullptr) return Form::turn_round;
  if (!scene.place.known()) return Form::junction;
  switch (order_of(roads.places[scene.place.index()].kind)) {
    case 0:
      return Form::ring;
    case 1:
      return Form::mini;
    case 2:
      return Form::level_crossing;
    default:
      return Form::junction;
  }
}

void add_ground(const road::Roads& roads, const wish::Loop& loop, At at, Scene& scene) {
  if (scene.place.known()) {
    const auto nodes = roads.nodes_of(scene.place);
    const auto pieces = roads.pieces_of(scene.place);
    scene.nodes.assign(nodes.begin(), nodes.end());
    scene.inside.assign(pieces.begin(), pieces.end());
  }
  for (std::size_t i = at.entry; i < at.exit; ++i) {
    const StretchId stretch = loop.stretches[i].stretch;
    const NodeId node = roads.to_node(stretch);
    if (!holds(scene.nodes, node)) scene.nodes.push_back(node);
    if (i > at.entry && !holds(scene.inside, stretch.piece()))
      scene.inside.push_back(stretch.piece());
  }
}

Point middle_of(const road::Roads& roads, const Scene& scene) {
  if (scene.place.known() && scene.form != Form::junction)
    return roads.places[scene.place.index()].at;
  double lat = 0, lon = 0;
  for (const NodeId node : scene.nodes) {
    lat += roads.nodes[node.index()].at.lat();
    lon += roads.nodes[node.index()].at.lon();
  }
  const auto count = static_cast<double>(scene.nodes.size());
  return point_from_degrees(lat / count, lon / count);
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

/// Several arms of other places; the entry's first.
void add_arms(const road::Roads& roads, double reach_m, Scene& scene) {
  for (const NodeId node : scene.nodes) {
    for (const StretchId away : roads.leaving(node)) {
      const bool aisle = (roads.piece(away).flags & flag::minor_service) != 0;
      if (holds(scene.inside, away.piece()) || (aisle && away != scene.exit)) continue;
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

road::Control control_between(const road::Roads& roads, StretchId from, StretchId to) {
  for (const road::Turn& turn : roads.turns_from(StateId{from.index()}))
    if (roads.stretch_of(turn.to) == to) return turn.control;
  return road::Control::none;
}

double up_of(const road::Roads& roads, const Scene& scene) {
  const bool round = scene.form == Form::ring || scene.form == Form::mini;
  if (!round || on_ring(roads, scene.entry)) return road::bearing_in_deg(roads, scene.entry);
  const road::Arm& row = arm_rows(roads, scene.place)[arm_row(roads, scene, scene.entry, {})];
  return place_deg(row.bearing_deg, lies_deg(roads, scene.frame, scene.entry.back())) + 180;
}

}  // namespace

bool meets_oncoming(const Scene& scene) {
  constexpr double ahead_deg = 50;
  return std::any_of(scene.arms.begin(), scene.arms.end(), [](const SceneArm& arm) {
    return !arm.is_entry && !arm.is_exit &&
           std::abs(heading_change_deg(0, arm.place_deg)) < ahead_deg;
  });
}

Line line_of(const road::Roads& roads, const Frame& frame, StretchId stretch) {
  const Line line = frame.line(roads.shape_of(stretch.piece()));
  return stretch.against() ? reversed(line) : line;
}

Line follow(const road::Roads& roads, const Frame& frame, StretchId away, double reach_m) {
  constexpr double bends_off_deg = 60;
  Line line = line_of(roads, frame, away);
  for (int hops = 0; hops < 30 && length_of(line) < reach_m; ++hops) {
    StretchId next;
    double least = bends_off_deg;
    for (const StretchId on : roads.leaving(roads.to_node(away))) {
      const double bend = std::abs(
          heading_change_deg(road::bearing_in_deg(roads, away), road::bearing_out_deg(roads, on)));
      if (on != away.back() && bend < least) next = on, least = bend;
    }
    if (!next.known()) break;
    const Line more = line_of(roads, frame, next);
    line.insert(line.end(), more.begin() + 1, more.end());
    away = next;
  }
  return part_of(line, 0, reach_m);
}

Scene scene_at(const road::Roads& roads, const wish::Loop& loop, At at, double reach_m) {
  assert(at.entry < at.exit && at.exit < loop.stretches.size());
  Scene scene;
  scene.entry = loop.stretches[at.entry].stretch;
  scene.exit = loop.stretches[at.exit].stretch;
  scene.control = control_between(roads, scene.entry, loop.stretches[at.entry + 1].stretch);
  scene.side = roads.info().region.side;
  scene.chance = chance_between(roads, scene.entry, scene.exit);
  if (scene.chance != nullptr)
    scene.place = scene.chance->place;
  else if (on_ring(roads, scene.entry) && !on_ring(roads, scene.exit))
    scene.place = ring_of(roads, scene.entry.piece());
  scene.form = form_of(roads, scene);
  add_ground(roads, loop, at, scene);
  const Point middle = middle_of(roads, scene);
  scene.frame = Frame(middle, 0);
  scene.frame = Frame(middle, up_of(roads, scene));
  const bool round = scene.form == Form::ring || scene.form == Form::mini;
  if (scene.form == Form::ring) scene.ring_m = roads.places[scene.place.index()].diameter_m / 2.0;
  round ? add_ring_arms(roads, reach_m, scene) : add_arms(roads, reach_m, scene);
  scene.driven = {scene.frame.spot(roads.nodes[roads.to_node(scene.entry).index()].at)};
  for (std::size_t i = at.entry + 1; i < at.exit; ++i)
    append(scene.driven, line_of(roads, scene.frame, loop.stretches[i].stretch));
  return scene;
}

}  // namespace loopwright::draw
