// 1. Everything is laid out in tenths of the shape's half: a circle of radius 10 in the middle.
// 2. A ring or mini is drawn by ring_shape.cpp.
// 3. Any other junction: the arms as they lie for 40 m beyond its nodes; those of a single node are
//    spread, and straight when that moved them or they soon bend away. The road the car comes by is
//    straight.
// 4. Roads are pale with a fine edge (which a bad printer still shows), service and private ones thin.
#include <algorithm>
#include <cmath>

#include "draw/shape.hpp"
#include "draw/spread.hpp"
#include "draw/way.hpp"

namespace loopwright::draw {
namespace {

using namespace shape_mm;

/// A road that bends more within the shape would look like a turn of the junction's (ours).
constexpr double most_bent_deg = 30;
/// Metres that the nodes of the place reach from its middle, and what is shown beyond.
double shown_m(const road::Roads& roads, const Scene& scene) {
  constexpr double beyond_m = 40;
  double inner = 0;
  for (const NodeId node : scene.nodes)
    inner = std::max(inner, length_of(scene.frame.spot(roads.nodes[node.index()].at)));
  return inner + beyond_m;
}

/// Turns of the arms of a single node, in degrees, that spread them; 0 where they lie well.
std::vector<double> turns_of(const Scene& scene) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < scene.arms.size(); ++i)
    if (!scene.arms[i].is_entry) order.push_back(i);
  const auto lies = [&](std::size_t i) { return round_deg(scene.arms[i].place_deg, 1); };
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return lies(a) < lies(b); });
  std::vector<double> angles;
  for (const std::size_t i : order) angles.push_back(lies(i));
  angles = spread(std::move(angles), gap_deg);
  std::vector<double> turns(scene.arms.size());
  for (std::size_t k = 0; k < order.size(); ++k) turns[order[k]] = angles[k] - lies(order[k]);
  return turns;
}

Line arm_line(const SceneArm& arm, double turn_deg, double shown) {
  const Spot root = arm.line.front();
  if (arm.is_entry) return up_to_circle({root, root + Spot{0, 3 * shown}}, {}, shown);
  const Line as_it_lies = up_to_circle(arm.line, {}, shown);
  const double bent = heading_change_deg(arm.place_deg, angle_deg(as_it_lies.back() - root));
  if (std::abs(turn_deg) < 0.5 && std::abs(bent) < most_bent_deg) return as_it_lies;
  return up_to_circle({root, root + 3 * shown * towards_deg(arm.place_deg + turn_deg)}, {}, shown);
}

Shape junction_shape(const road::Roads& roads, const Scene& scene) {
  const double shown = shown_m(roads, scene), scale = reach / shown;
  const std::vector<double> turns =
      scene.nodes.size() == 1 ? turns_of(scene) : std::vector<double>(scene.arms.size());
  Shape shape;
  for (const PieceId piece : scene.inside)
    shape.roads.push_back(
        {scaled(line_of(roads, scene.frame, StretchId(piece, false)), scale), road_wide});
  Line in, out;
  for (std::size_t i = 0; i < scene.arms.size(); ++i) {
    const SceneArm& arm = scene.arms[i];
    const Line line = simplified(scaled(arm_line(arm, turns[i], shown), scale), 0.3);
    shape.roads.push_back({line, width_of(arm)});
    if (arm.is_entry) in = reversed(line);
    if (arm.is_exit) out = line;
  }
  append(in, scaled(scene.driven, scale));
  append(in, out);
  shape.way = rounded(simplified(in, 0.3), 1.8);
  return shape;
}

void add_rails(const road::Roads& roads, const Scene& scene, Shape& shape) {
  const double scale = reach / shown_m(roads, scene);
  constexpr double gauge = 1.5, apart = 3.2;
  std::vector<Spot> drawn;
  for (const NodeId node : scene.nodes) {
    const road::Node& row = roads.nodes[node.index()];
    const Spot at = scale * scene.frame.spot(row.at);
    const bool near = std::any_of(drawn.begin(), drawn.end(),
                                  [&](Spot other) { return length_of(at - other) < apart; });
    if (near || (row.flags & road::node_flag::level_crossing) == 0) continue;
    drawn.push_back(at);
    // The area doesn't keep the railway's own angle: it is drawn square to the road.
    draw_rails(shape.under, at, {1, 0}, 1.7 * reach, gauge);
  }
}

Shape turn_round_shape(const road::Roads& roads, const Scene& scene) {
  constexpr double top = -3, apart = 1.5;
  const double to_near = scene.side == Side::left ? -apart : apart;
  const bool ends =
      (roads.nodes[roads.to_node(scene.entry).index()].flags & road::node_flag::dead_end) != 0;
  Shape shape;
  const double on = ends ? top - 3 : -reach;
  shape.roads.push_back({{{0, reach}, {0, on}}, 6});
  shape.way = {{to_near, reach}, {to_near, top}};
  append(shape.way, arc({0, top}, apart, to_near < 0 ? 270 : 90, to_near < 0 ? 180 : -180));
  append(shape.way, {{-to_near, top}, {-to_near, reach - 1}});
  if (ends) shape.under.add(Stroke{{{-4.5, on - 0.2}, {4.5, on - 0.2}}, 0.8});
  return shape;
}

}  // namespace

Picture row_shape(const road::Roads& roads, const wish::Loop& loop, At at, Size size) {
  const Scene scene = scene_at(roads, loop, at, 150);
  switch (scene.form) {
    case Form::ring:
    case Form::mini:
      return drawn(ring_shape(scene), size);
    case Form::turn_round:
      return drawn(turn_round_shape(roads, scene), size);
    default:
      break;
  }
  Shape shape = junction_shape(roads, scene);
  if (scene.form == Form::level_crossing) add_rails(roads, scene, shape);
  if (scene.control == road::Control::signals)
    draw_lamps(shape.under, {scene.side == Side::left ? -3.6 : 3.6, 7.6}, 3.6);
  return drawn(shape, size);
}

}  // namespace loopwright::draw
