// The law a town lives under, as far as the tool needs it: which side one drives on, the units
// on the signs, and under which name its default limits are kept.
//
//   Region wales = find_region("GB-WLS");
//
// Rules: codes are ISO 3166-1 alpha-2, with -ENG, -WLS, -SCT, -NIR for Great Britain's and Northern
// Ireland's nations (ISO 3166-2). Facts come from src/rules/regions.txt, with their source.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace loopwright {

enum class Side : std::uint8_t { left, right };
enum class SpeedUnit : std::uint8_t { mph, kmh };

struct Region {
  std::string code;         ///< "GB-WLS", "LI"
  Side side = Side::right;  ///< of the road one drives on
  SpeedUnit unit = SpeedUnit::kmh;
  bool own_rules = false;  ///< false: general default limits are used, and the user is told
};

/// The region of a code (upper or lower case). Empty when no ISO 3166 country has that code,
/// or for a bare "GB" (the nations' limits differ, so one of them must be named).
std::optional<Region> find_region(std::string_view code);

std::string_view name(Side side);       // "left", "right"
std::string_view name(SpeedUnit unit);  // "mph", "km/h"
std::optional<SpeedUnit> parse_speed_unit(std::string_view text);

}  // namespace loopwright
