// Why a wish for bus lanes as usable, or in force, isn't met: what holds on those in reach meanwhile,
// and when it is otherwise.
#pragma once

#include <span>
#include <string>

#include "find/by_the_hour.hpp"
#include "find/reached_chances.hpp"

namespace loopwright::find {

/// "the bus lanes in reach are in force all through; from 10:00 one is usable"; starts at which one would
/// have the verdict, gone to by the shortest way, are kept by the clock. Empty when some lane within the
/// minutes may have the verdict during the lesson, or none is within the minutes.
/// Rules: the want asks for a verdict; reached: its lanes, whatever their verdict.
std::string lanes_at_that_time(const Ground& ground, const wish::Want& want,
                               std::span<const ReachedChance> reached, ByTheHour& clock);

}  // namespace loopwright::find
