// 1. Of the chances that lead from the entry to the exit the one that says most of the place is
//    taken: ring, mini, level crossing, lights, crossroads, staggered, any other.
// 2. The middle is the place's, or that of the nodes passed. Up is the way from the entry's arm to the
//    middle of a ring, the heading of the entry's last metres elsewhere: as the words count turns.
#include "draw/scene.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "draw/scene_arms.hpp"
#include "loopwright/base/point_between.hpp"

namespace loopwright::draw {
namespace {

using road::Kind;

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
  const Point first = roads.nodes[scene.nodes.front().index()].at;
  for (const NodeId node : scene.nodes) {
    lat += roads.nodes[node.index()].at.lat();
    lon += static_cast<double>(lon_beside_e7(roads.nodes[node.index()].at, first)) * 1e-7;
  }
  const auto count = static_cast<double>(scene.nodes.size());
  return point_of_turn(std::llround(lat / count * 1e7), std::llround(lon / count * 1e7));
}

road::Control control_between(const road::Roads& roads, StretchId from, StretchId to) {
  for (const road::Turn& turn : roads.turns_from(StateId{from.index()}))
    if (roads.stretch_of(turn.to) == to) return turn.control;
  return road::Control::none;
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
