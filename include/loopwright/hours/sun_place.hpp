// Where the sun stands in the sky, for roads that are driven into it.
//
//   const SunPlace sun = sun_place(at, {54.3, 2.6});   if (sun.height_deg < 15) warn(sun.bearing_deg);
//
// Rules: seen from the ground at sea level without refraction, which lifts a sun on the horizon by half a
// degree. Source: libnova (Meeus, Astronomical Algorithms).
#pragma once

#include "loopwright/base/instant.hpp"
#include "loopwright/base/point.hpp"

namespace loopwright::hours {

struct SunPlace {
  double bearing_deg = 0;  ///< compass, 0 to 360
  double height_deg = 0;   ///< above the horizon; negative: below
};

SunPlace sun_place(const Instant& at, Point from);

}  // namespace loopwright::hours
