#include "draw/way.hpp"

namespace loopwright::draw {

void draw_way(Picture& picture, const Line& way, double width, double bar) {
  const Spot end = way.back();
  const Spot across = left_of(direction_at(way, length_of(way)));
  const Line bar_line{end + (bar / 2) * across, end - (bar / 2) * across};
  picture.add(Stroke{way, width * 1.3, Ink::paper});
  picture.add(Stroke{bar_line, width * 1.3, Ink::paper});
  picture.add(Stroke{way, width});
  picture.add(Stroke{bar_line, width});
}

void draw_rails(Picture& picture, Spot at, Spot direction, double length, double gauge) {
  const Spot ahead = unit(direction), across = left_of(ahead);
  const double line = gauge * 0.17;
  for (const double side : {-gauge / 2, gauge / 2}) {
    const Spot middle = at + side * across;
    picture.add(Stroke{{middle - (length / 2) * ahead, middle + (length / 2) * ahead}, line});
  }
  const double step = gauge * 0.8;
  for (double on = -length / 2 + step / 2; on < length / 2; on += step) {
    const Spot middle = at + on * ahead;
    picture.add(Stroke{{middle - (gauge * 0.85) * across, middle + (gauge * 0.85) * across}, line});
  }
}

void draw_lamps(Picture& picture, Spot at, double height) {
  const double width = height * 0.44, step = height * 0.29;
  const Spot corner = at - Spot{width / 2, height / 2};
  picture.add(Fill{
      {{corner, corner + Spot{width, 0}, corner + Spot{width, height}, corner + Spot{0, height}}}});
  for (const double y : {-step, 0.0, step})
    picture.add(Disc{at + Spot{0, y}, height * 0.11, Ink::paper, 0});
}

}  // namespace loopwright::draw
