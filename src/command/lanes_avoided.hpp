// What a route keeps out of because of its hours: without a word the long way round looks like a
// mistake.
#pragma once

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "command/lanes_beside.hpp"

namespace loopwright::command {

/// The drive of a wish were no street and no turn shut at any hour; limits keep their hours.
std::optional<wish::Loop> drive_without_hours(const TimedRoads& timed, const wish::Wish& wish);

/// "Fore Street, which is shut until 10:00", "the turn into Osk Road, which may be banned until 19:00":
/// what the clock shuts on a drive at the time it would be there, in driving order, each once.
std::vector<std::string> shut_on(const TimedRoads& timed, const wish::Loop& quicker);

/// "kept out of Fore Street, which is shut until 10:00; that way is two minutes shorter": nothing when
/// hours cost the drive no time.
void print_avoided(std::ostream& out, const TimedRoads& timed, const wish::Wish& wish,
                   const wish::Loop& drive);

}  // namespace loopwright::command
