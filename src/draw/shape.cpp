#include "draw/shape.hpp"

#include <algorithm>
#include <cmath>

#include "draw/way.hpp"

namespace loopwright::draw {

using namespace shape_mm;

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

double round_deg(double place_deg, double sense) {
  const double round = std::fmod(sense * (place_deg - 180), 360);
  return round < 0 ? round + 360 : round;
}

}  // namespace loopwright::draw
