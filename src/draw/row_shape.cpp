// 1. Everything is laid out in tenths of the shape's half: a circle of radius 10 in the middle.
// 2. Ring or mini: arms are straight, where they lie round the middle, spread; the ring is at least so
//    large that its exits are seen. The way goes round in the driving direction.
// 3. Any other junction: the arms as they lie for 40 m beyond its nodes; those of a single node are
//    spread, and straight when that moved them or they soon bend away. The road the car comes by is straight.
// 4. Roads are pale with a fine edge (which a bad printer still shows), service and private ones thin.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "draw/scene.hpp"
#include "draw/spread.hpp"
#include "draw/way.hpp"

namespace loopwright::draw {
namespace {

// In tenths of half the shape: millimetres at 22 mm.
constexpr double reach = 10, road_wide = 2.6, lane_wide = 1.4, way_wide = 1.3, bar_wide = 4;
/// Roads closer than this can't be told apart in a glance (ours).
constexpr double gap_deg = 24;

/// A road that bends more within the shape would look like a turn of the junction's (ours).
constexpr double most_bent_deg = 30;

/// Pale roads, then the way, in tenths around the middle; put into the picture at the end.
struct Shape {
  struct Road {
    Line line;
    double width = road_wide;
  };
  std::vector<Road> roads;
  Picture under;  ///< between the roads and the way
  Line way;
};

Picture drawn(const Shape& shape, Size size) {
  Picture around{0, 0};
  for (const Shape::Road& road : shape.roads)
    around.add(Stroke{road.line, road.width + 0.4, Ink::grey, Cap::round});
  for (const Shape::Road& road : shape.roads)
    around.add(Stroke{road.line, road.width, Ink::pale, Cap::round});
  for (const Mark& mark : shape.under.marks) around.add(mark);
  draw_way(around, shape.way, way_wide, bar_wide);
  Picture picture{size.width, size.height};
  place(picture, around, {size.width / 2, size.height / 2},
        std::min(size.width, size.height) / 2 / (reach + 1));
  return picture;
}

double width_of(const SceneArm& arm) {
  return arm.counted || arm.is_entry || arm.is_exit ? road_wide : lane_wide;
}

/// How far round from the bottom, clockwise or, where one drives on the right, the other way.
double round_deg(double place_deg, double sense) {
  const double round = std::fmod(sense * (place_deg - 180), 360);
  return round < 0 ? round + 360 : round;
}

class RingShape {
 public:
  explicit RingShape(const Scene& scene) : scene_(scene) {
    sense_ = scene.side == Side::left ? 1 : -1;
    radius_ = scene.form == Form::mini ? 2.6 : std::clamp(2.8 + scene.ring_m * 0.09, 3.4, 5.6);
    lay_arms();
  }

  Shape shape() {
    for (std::size_t i = 0; i < scene_.arms.size(); ++i)
      shape_.roads.push_back(
          {{at(rounds_[i], radius_), at(rounds_[i], reach)}, width_of(scene_.arms[i])});
    shape_.roads.push_back({arc({}, radius_, 0, 360), road_wide});
    shape_.way = way();
    return shape_;
  }

 private:
  void lay_arms() {
    const std::size_t first = scene_.arms[0].is_entry ? 1 : 0;
    const auto count = static_cast<double>(scene_.arms.size());
    std::vector<double> lies;
    for (std::size_t i = first; i < scene_.arms.size(); ++i) {
      // The first met may lie just behind where the car comes from, not nearly all the way round.
      const double expected = 360 * static_cast<double>(i) / count;
      const double round = round_deg(scene_.arms[i].place_deg, sense_);
      lies.push_back(expected + heading_change_deg(expected, round));
    }
    rounds_ = spread(std::move(lies), gap_deg);
    if (first == 1) rounds_.insert(rounds_.begin(), 0);
  }

  [[nodiscard]] Spot at(double round, double radius) const {
    return radius * towards_deg(180 + sense_ * round);
  }

  /// From where the car starts round to the exit.
  [[nodiscard]] Line way() const {
    const auto exit =
        static_cast<std::size_t>(std::find_if(scene_.arms.begin(), scene_.arms.end(),
                                              [](const SceneArm& arm) { return arm.is_exit; }) -
                                 scene_.arms.begin());
    const bool back = scene_.arms[exit].is_entry;
    // Back out by the same road: beside the way in, each on its side.
    const double beside = back ? 1.4 : 0;
    const double beside_deg = std::asin(beside / radius_) * 180 / std::numbers::pi;
    const double start = scene_.arms[0].is_entry ? beside_deg : 90;
    const double ahead = rounds_[exit] < start ? rounds_[exit] + 360 : rounds_[exit];
    const double end = back ? 360 - beside_deg : ahead;
    const double swing = std::min(26.0, (end - start) / 2.5);
    Line line;
    if (scene_.arms[0].is_entry) {
      const Spot side = (sense_ * beside) * Spot{-1, 0};
      line = {side + Spot{0, reach}, side + Spot{0, radius_ + 1.6}};
      append(line,
             curve(line.back(), {0, -1}, at(start + swing, radius_), along_ring(start + swing)));
    }
    const double leave = end - swing;
    append(line,
           arc({}, radius_, 180 + sense_ * (start + swing), sense_ * (leave - start - swing)));
    const Spot side = (sense_ * beside) * Spot{1, 0};
    const Spot out = back ? side + Spot{0, radius_ + 1.6} : at(end, radius_ + 1.6);
    append(line, curve(line.back(), along_ring(leave), out, at(back ? 360 : end, 1)));
    line.push_back(out);
    line.push_back(back ? side + Spot{0, reach} : at(end, reach));
    return line;
  }

  [[nodiscard]] Spot along_ring(double round) const {
    return towards_deg(180 + sense_ * (round + 90));
  }

  const Scene& scene_;
  double sense_ = 1, radius_ = 4;
  std::vector<double> rounds_;
  Shape shape_;
};

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

constexpr double kerb_off = 3;

/// A way along a road that swings between its lane and a kerb, and that kerb.
Shape kerb_shape(double lane, double kerb, bool towards_it) {
  Shape shape;
  shape.roads.push_back({{{0, reach}, {0, -reach}}, 6});
  const double low = towards_it ? lane : kerb, high = towards_it ? kerb : lane;
  const double end = towards_it ? -6 : -reach;
  shape.way = {{low, towards_it ? reach : 7}, {low, 3}};
  append(shape.way, curve({low, 3}, {0, -1}, {high, -3}, {0, -1}));
  append(shape.way, {{high, -3}, {high, end}});
  const double edge = kerb + (kerb < 0 ? -1.6 : 1.6), mark = towards_it ? -5 : 5;
  shape.under.add(
      Stroke{{{edge, mark - 4}, {edge, mark + 4}}, 0.5, Ink::black, Cap::butt, {1.2, 0.8}});
  return shape;
}

/// Left is -1.
double sign_of(Side side) {
  return side == Side::left ? -1 : 1;
}

}  // namespace

Picture row_shape(const road::Roads& roads, const wish::Loop& loop, At at, Size size) {
  const Scene scene = scene_at(roads, loop, at, 150);
  switch (scene.form) {
    case Form::ring:
    case Form::mini:
      return drawn(RingShape(scene).shape(), size);
    case Form::turn_round:
      return drawn(turn_round_shape(roads, scene), size);
    default:
      break;
  }
  Shape shape = junction_shape(roads, scene);
  if (scene.form == Form::level_crossing) add_rails(roads, scene, shape);
  if (scene.control == road::Control::signals)
    draw_lamps(shape.under, {3.6 * sign_of(scene.side), 7.6}, 3.6);
  return drawn(shape, size);
}

Picture pull_up_shape(Side driving, Side kerb, Size size) {
  const double side = sign_of(kerb);
  Shape shape = kerb_shape(sign_of(driving), side * kerb_off, true);
  shape.under.add(Label{{side * 7.2, -7}, "P", {10, true, Ink::black, Align::middle}});
  return drawn(shape, size);
}

Picture set_off_shape(Side driving, Size size) {
  const double side = sign_of(driving);
  return drawn(kerb_shape(side, side * kerb_off, false), size);
}

}  // namespace loopwright::draw
