// Everything with hours that a drive meets, as one list: bus lanes and gates, streets shut at some
// hours, turns forbidden at some, limits by the hour; and what each means for our car at any time.
//
//   for (const TimedThing& thing : things_on({roads, loop, setting}))
//     print(verdict_on(thing, passing_of(thing, loop, setting), setting).may);
//
// Rules: the loop is resolved. For bus lanes and gates doubt is "check the plate", for streets and
// turns it is "keep out": nobody stops at the mouth of a street to read a plate. A limit in doubt
// has several values. A thing keeps all it needs, so it can be asked of any minute of any day.
// Why: the list of a drive, its day table and the advice on its start ask the same things.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "loopwright/lanes/met.hpp"
#include "loopwright/lanes/thing.hpp"

namespace loopwright::lanes {

/// May our car use it?
enum class May : std::uint8_t { yes, no, check };

struct TimedThing {
  Thing thing = Thing::bus_lane;
  Rows rows;             ///< of the drive; of a turn: the row before it, and the row turned into
  std::string street;    ///< "Osk Road", "unnamed road"; of a turn "Mill Street into Osk Road"
  std::string place;     ///< of a lane: "on the left, lane 1 of 2 from the left"; else empty
  std::string words;     ///< its hours: "Monday to Friday, seven till ten", "hours not mapped"
  std::string shut;      ///< when it keeps us out (hours::Timetable); empty: not mapped, or a limit
  std::string base;      ///< of a limit: the value when no clause holds
  std::string values;    ///< of a limit: its clauses (hours::Conditional)
  std::string never;     ///< why it is never for us at any time; empty: it may be
  std::string doubt;     ///< in words, what the map contradicts or doesn't say; else empty
  std::string who;       ///< may use it in its hours, as mapped: "bus;taxi"
  std::string map_text;  ///< the tags that say so
  OsmObject source;
};

/// All that is told of a thing but where it lies: a bus-only street counts as a bus gate, since which
/// of the two it is hangs on the length of all of it. Of a bus lane not by which tags: a lane of which
/// one part is mapped by other tags, or noted on another day, goes on.
using Told = std::tuple<Thing, std::string, std::string, std::string, std::string, std::string,
                        std::string, std::string>;
Told told_of(const TimedThing& thing);

/// "Osk Road", else its number, else "unnamed road".
std::string street_name(const road::Roads& roads, StretchId stretch);

/// In driving order.
std::vector<TimedThing> things_on(const TimedDrive& drive);
/// Of one pass of a lane or gate. Rules: its rows are the loop's.
TimedThing thing_of_lane(const wish::Loop& loop, const wish::BusLanePass& lane);
/// Of a street or a limit; `rows` is left for the caller.
TimedThing thing_of_rule(const road::Roads& roads, const road::TimedRule& rule);
/// Of a turn; `rows` is left for the caller.
TimedThing thing_of_turn(const road::Roads& roads, const road::TurnRule& rule);

/// The interval in which the drive uses it.
Passing passing_of(const TimedThing& thing, const wish::Loop& loop, const hours::Setting& setting);

struct ThingVerdict {
  May may = May::check;
  std::string limit;    ///< of a limit: "20 mph", "30 mph or 20 mph"
  std::string because;  ///< what the hours alone don't tell: "the hours can't be read"; else empty
  friend bool operator==(const ThingVerdict&, const ThingVerdict&) = default;
};
/// All through the interval.
ThingVerdict verdict_on(const TimedThing& thing, const Passing& when,
                        const hours::Setting& setting);

/// "usable", "in force, keep out", "check the plate"; of a street "may be driven", of a turn "may be
/// made"; of a limit its values.
std::string verdict_words(Thing thing, const ThingVerdict& verdict);
/// The same; of what is never for us "keep out", whether its hours are mapped or not.
std::string verdict_words(const TimedThing& thing, const ThingVerdict& verdict);

/// The first minute after `at` with another answer; empty: none within 400 days.
std::optional<Instant> next_change(const TimedThing& thing, const Instant& at,
                                   const hours::Setting& setting);
/// What stands in place of a next change: "none to come", "none, it never changes",
/// "the map can't say".
std::string_view no_change_words(const TimedThing& thing, const Instant& at,
                                 const hours::Setting& setting);

}  // namespace loopwright::lanes
