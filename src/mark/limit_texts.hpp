// What the texts of maxspeed, maxspeed:type and their kin say, before any law is applied.
//
//   read_limit("30 mph")         // a number: 30, mph
//   read_limit("GB:nsl_single")  // a rule: national_single
//
// Rules: private to mark.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "loopwright/road/limit.hpp"

namespace loopwright::mark {

struct LimitText {
  enum class What : std::uint8_t { unreadable, number, bare_number, rule, national, varies };
  What what = What::unreadable;
  road::LimitRule rule = road::LimitRule::unknown;  ///< of rule
  int value = 0;                                    ///< of numbers, and of zones
  SpeedUnit unit = SpeedUnit::kmh;
};

/// "national": the national limit of whatever carriageway the road has (GB:national).
LimitText read_limit(std::string_view text);

/// True for "GB:nsl_single", "DE:urban", "GB-WLS:nsl_restricted" …: a country, a colon, a zone.
bool names_zone(std::string_view text);

}  // namespace loopwright::mark
