// When humps slow a whole piece of road.
//
// Rules: private to mark.
#pragma once

#include <cstddef>

namespace loopwright::mark {

/// The greatest distance between humps that makes a series (council summary of the 1999 regulations:
/// 20-150 m).
inline constexpr double hump_every_m = 150;

/// True when so many humps on a piece of road make a series of it.
constexpr bool humps_slow(std::size_t humps, double length_m) {
  return humps > 0 && static_cast<double>(humps) * hump_every_m >= length_m;
}

}  // namespace loopwright::mark
