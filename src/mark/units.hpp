// What other units are in ours. Source: the yard of 0.9144 m (International Yard and Pound Agreement 1959).
#pragma once

namespace loopwright::mark {

inline constexpr double inch_m = 0.0254, feet_m = 12 * inch_m;
inline constexpr double mps_per_mph = 0.44704, mps_per_kmh = 1 / 3.6;

}  // namespace loopwright::mark
