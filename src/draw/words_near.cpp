#include "draw/words_near.hpp"

#include <algorithm>
#include <cmath>

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

bool write_led(Picture& page, Taken& taken, Spot spot, const Label& words, double furthest) {
  // What belongs to the spot itself lies nearer.
  constexpr double from = 2.8, nearest = 2, step = 1, each_deg = 15, gap = 0.4;
  const Extent extent = extent_of(words);
  for (double out = nearest; out <= furthest; out += step)
    for (double angle = 0; angle < 360; angle += each_deg) {
      const Spot to = towards_deg(angle);
      const double reach = std::min(extent.width / 2 / std::max(std::abs(to.x), 1e-6),
                                    extent.height / 2 / std::max(std::abs(to.y), 1e-6));
      const double line_end = from + out - gap;
      const Area area{spot + (from + out + reach) * to, extent.width, extent.height};
      const Area line{spot + ((from + line_end) / 2) * to, line_end - from, 0.3, angle - 90};
      if (!taken.free(area) || !taken.free(line)) continue;
      taken.add(area), taken.add(line);
      page.add(Stroke{{spot, spot + line_end * to}, 0.3});
      page.add(label_in(area, words.text, words.type));
      return true;
    }
  return false;
}

}  // namespace loopwright::draw
