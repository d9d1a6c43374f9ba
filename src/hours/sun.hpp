// When the sun rises and sets at a place.
//
// Rules: private to hours; the only user of libnova.
#pragma once

#include <cstdint>
#include <optional>

#include "loopwright/base/instant.hpp"
#include "loopwright/base/point.hpp"

namespace loopwright::hours {

/// Moments in seconds since the epoch. Far north the sun may set without twilight ending.
struct SunMoments {
  std::int64_t sunrise = 0, sunset = 0;
  std::optional<std::int64_t> dawn, dusk;
};

/// Of a day on a clock so many seconds ahead of UTC. Empty where the sun doesn't rise or set that
/// day. Dawn and dusk are those of civil twilight, the sun six degrees down.
std::optional<SunMoments> sun_on(Date day, std::int32_t offset_s, Point place);

}  // namespace loopwright::hours
