// Where a place lies along a curve that fills the map, so that what is near on the ground is near on the curve.
//
//   place_on_curve(a) < place_on_curve(b)   // a comes before b
//
// Method: Hilbert's curve over longitude and latitude in units of 1e-7 degree. From the coarsest square down, each takes two
// bits: which of its quarters holds the place, counted as the curve passes them; the square is then turned so that the curve
// enters it as it entered the whole.
// Why ours: a dozen lines; the libraries that have it (GEOS, S2) aren't needed for anything else.
// Source: D. Hilbert, Über die stetige Abbildung einer Linie auf ein Flächenstück, Math. Ann. 38 (1891), 459-460; the
// order of the quarters as in Wikipedia, Hilbert curve (from memory).
#pragma once

#include <cstdint>
#include <utility>

#include "loopwright/base/point.hpp"

namespace loopwright {

constexpr std::uint64_t place_on_curve(std::uint32_t x, std::uint32_t y) {
  std::uint64_t place = 0;
  for (std::uint32_t half = std::uint32_t{1} << 31U; half > 0; half /= 2) {
    const bool right = (x & half) != 0, upper = (y & half) != 0;
    place = place * 4 + (upper ? (right ? 2 : 1) : (right ? 3 : 0));
    if (upper) continue;
    if (right) x = ~x, y = ~y;
    std::swap(x, y);
  }
  return place;
}

constexpr std::uint64_t place_on_curve(Point at) {
  return place_on_curve(static_cast<std::uint32_t>(std::int64_t{at.lon_e7} + 1'800'000'000),
                        static_cast<std::uint32_t>(std::int64_t{at.lat_e7} + 900'000'000));
}

}  // namespace loopwright
