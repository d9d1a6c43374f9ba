// Civil time and instants, through the system's time zone data.
//
// Rules: throws InputError when the system has no such zone (install tzdata).
#pragma once

#include <string>
#include <string_view>

#include "loopwright/base/instant.hpp"
#include "loopwright/base/point.hpp"

namespace loopwright::hours {

/// The IANA zone of a country (ISO 3166 code, or GB-WLS …), the nearest to a place when there are
/// several; "UTC" when the system's zone.tab has none.
std::string zone_of(std::string_view region_code, Point near);

/// A wall-clock time in a zone. A time that occurs twice is the first of the two; one that the
/// clocks jump over is moved on by the jump.
Instant instant_in(std::string_view zone, const CivilTime& civil);

/// The offset a zone has at a moment.
Instant with_offset_of(std::string_view zone, std::int64_t unix_s);

}  // namespace loopwright::hours
