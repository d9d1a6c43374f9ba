// Which passes of a drive count, and what they are worth (DEVELOPERS.md, "Value of a loop").
//
//   time_passes(ground, drive, passes);
//   counting(ground, passes, want).size();   worth_of(ground, passes);
//
// Rules: passes are all of the drive, in driving order. Times matter only where something is spaced; whoever
// leaves them out counts passes that begin too soon, too.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/find/passes.hpp"
#include "loopwright/find/practised.hpp"

namespace loopwright::find {

/// Tells each pass when it is begun. Rules: the passes are the drive's.
void time_passes(const Ground& ground, const Drive& drive, std::span<PlacePass> passes);

/// Some spacing is asked for, so that counting takes times.
bool is_spaced(const wish::Wish& wish);

/// Numbers of the passes that count for a want: at most the cap for each place, spaced as asked.
std::vector<std::size_t> counting(const Ground& ground, std::span<const PlacePass> passes,
                                  const wish::Want& want);

/// Which passes a "max" want is practised by. Rules: they are timed.
Practised practised(const Ground& ground, std::span<const PlacePass> passes,
                    const wish::Want& want);

/// What the passes are worth, in milli-units: those for "max" wants, and those that are welcome. Rules:
/// they are timed.
std::int64_t worth_of(const Ground& ground, std::span<const PlacePass> passes);

/// The value of a loop is what its passes are worth: something is wanted as "max", or welcome.
bool counts_worth(const wish::Wish& wish);

}  // namespace loopwright::find
