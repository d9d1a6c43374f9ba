// Which way a chance turns, by the change of heading from its entry to its exit.
#include <cassert>
#include <cmath>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {
namespace {

using road::Movement;

// What is still "ahead" (DEVELOPERS.md: 45 degrees), and from where one is going back at a ring or
// mini.
constexpr double ahead_within_deg = 45;
constexpr double round_beyond_deg = 160;

}  // namespace

Movement movement_of(double heading_change_deg) {
  assert(heading_change_deg >= -180 && heading_change_deg <= 180);
  if (std::abs(heading_change_deg) > round_beyond_deg) return Movement::round;
  if (std::abs(heading_change_deg) <= ahead_within_deg) return Movement::ahead;
  return heading_change_deg < 0 ? Movement::left : Movement::right;
}

}  // namespace loopwright::mark
