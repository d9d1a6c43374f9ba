// The hours of a turn restriction as they were written before there were conditions.
//
//   old_hours({{"day_on", "Monday"}, {"day_off", "Friday"}, {"hour_on", "07:00"},
//              {"hour_off", "09:00"}}) == "Mo-Fr 07:00-09:00"
//
// Source: OSM wiki Relation:restriction (day_on, day_off, hour_on, hour_off; deprecated).
#pragma once

#include <string>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::read {

/// In today's grammar; the keys as they stand when they can't be read; empty when there are none.
std::string old_hours(const mark::Tags& tags);

}  // namespace loopwright::read
