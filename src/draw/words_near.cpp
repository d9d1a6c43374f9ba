#include "draw/words_near.hpp"

namespace loopwright::draw {

bool write_near(Picture& page, Taken& taken, Spot spot, const Label& words, double gap) {
  constexpr double furthest = 8, step = 1, each_deg = 30;
  const Extent extent = extent_of(words);
  for (double out = gap; out <= gap + furthest; out += step)
    for (double angle = 90; angle < 450; angle += each_deg) {
      const Spot to = towards_deg(angle);
      const double x = out > 0 ? to.x * (out + extent.width / 2) : 0;
      const double y = out > 0 ? to.y * (out + extent.height / 2) : 0;
      const Area area{spot + Spot{x, y}, extent.width, extent.height};
      if (!taken.free(area)) continue;
      taken.add(area);
      page.add(label_in(area, words.text, words.type));
      return true;
    }
  return false;
}

}  // namespace loopwright::draw
