// What of a drive has hours, each thing once with all the times at which it is passed; and whether
// something of it forbids driving the card as it is printed.
//
//   for (const Timed& timed : timed_on({roads, loop, setting})) print(timed.thing.street);
//
// Rules: the loop is resolved. All is judged anew for the loop's start; nothing is taken from a file.
// Why: a card whose street is shut at the hour must say so before its first row is read.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "loopwright/lanes/timed_things.hpp"
#include "loopwright/say/words.hpp"
#include "loopwright/wish/map_fact.hpp"

namespace loopwright::card {

/// One pass of a thing.
struct Visit {
  std::size_t stretch = 0;  ///< of the whole drive, on which it is met
  lanes::Passing when;
  lanes::ThingVerdict verdict;
  std::optional<Instant> change;  ///< the next other answer on the same day
};

struct Timed {
  lanes::TimedThing thing;  ///< of its first pass
  std::vector<Visit> visits;
  std::vector<wish::MapFact> facts = {};  ///< its hours on each way along which it is met
};

/// Things that are alike in all that is told of them come together; in the order first met.
std::vector<Timed> timed_on(const lanes::TimedDrive& drive);

/// A bus lane, or a gate or street for buses: told with its sign.
bool is_for_buses(const Timed& timed);

/// "Osk Road, bus lane on the left", "Mill Street into Osk Road", "Mill Orchard".
std::string write_thing(const Timed& timed);
/// "in force Monday to Saturday, four till seven", "no left turn Monday to Friday, seven till ten".
std::string write_hours(const say::Words& words, const Timed& timed);
/// "cars may use it", "keep out", "30 mph or 20 mph, check the signs"; then what it hangs on.
std::string write_verdict(const say::Words& words, const Timed& timed, const Visit& visit);
/// "15:04 to 15:06", or "15:04".
std::string write_times(const say::Words& words, const lanes::Passing& when);

/// A pass that forbids driving so: of a street, turn or gate that is shut then, or may be.
struct Barred {
  const Timed* timed = nullptr;
  const Visit* visit = nullptr;
};
/// In driving order; valid while `all` is.
std::vector<Barred> barred_on(std::span<const Timed> all);
/// "Don't drive this card as printed at this time: at 15:04 it passes …"; empty when nothing bars it.
std::string write_barred(const say::Words& words, std::span<const Barred> barred);

}  // namespace loopwright::card
