// The angles are pushed up in one pass and down in another; half way between both is as far apart,
// and no road is moved more than needed to one side.
#include "draw/spread.hpp"

#include <algorithm>

namespace loopwright::draw {

std::vector<double> spread(std::vector<double> angles, double gap) {
  const std::size_t count = angles.size();
  gap = std::min(gap, 360.0 / static_cast<double>(count + 1));
  for (std::size_t i = 0; i < count; ++i)
    angles[i] = std::clamp(angles[i], gap * static_cast<double>(i + 1),
                           360 - gap * static_cast<double>(count - i));
  std::vector<double> up = angles, down = angles;
  for (std::size_t i = 1; i < count; ++i) up[i] = std::max(up[i], up[i - 1] + gap);
  for (std::size_t i = count; i-- > 1;) down[i - 1] = std::min(down[i - 1], down[i] - gap);
  for (std::size_t i = 0; i < count; ++i) angles[i] = (up[i] + down[i]) / 2;
  return angles;
}

}  // namespace loopwright::draw
