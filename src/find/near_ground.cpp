#include "find/near_ground.hpp"

#include <algorithm>
#include <cmath>

#include "loopwright/wish/lesson.hpp"

namespace loopwright::find {

wish::Wish there_and_back(const wish::Wish& wish, double within_minutes) {
  wish::Wish both = wish;
  both.minutes =
      std::min(wish::own_drive_minutes, static_cast<int>(std::lround(2 * within_minutes)));
  return both;
}

ClockWalls near_walls(const road::Roads& roads, const wish::Wish& wish,
                      const hours::Setting& setting) {
  ClockWalls walls(roads, wish, setting);
  walls.shut_all();
  return walls;
}

}  // namespace loopwright::find
