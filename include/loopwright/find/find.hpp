// Lesson loops: from the door and back, meeting the wish inside the time.
//
//   FindResult r = find_loops(roads, wish, setting);   // r.loops may be empty; then r.shortfall says why
//
// Rules: deterministic: the same wish gives the same loops; it stops on counted work. Times of the
// answer are in pace's likely milliseconds. Throws UsageError when home or end is off the roads.
// A street or turn that the clock may shut when the drive is there is never driven.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

struct FindResult {
  std::vector<wish::Loop> loops;
  std::optional<wish::Shortfall> shortfall;
  std::string fewer_because;
};

/// How hard to look, and how hard to say how good the loops are: `quick` for an answer as a page reloads,
/// with a coarse bound; `soon` for one in about a second; `usual`; `thorough` for the closest bound.
enum class Effort : std::uint8_t { quick, soon, usual, thorough };

FindResult find_loops(const road::Roads& roads, const wish::Wish& wish,
                      const hours::Setting& setting, Effort effort = Effort::quick);

/// Adds to loops that were found an easier and a harder variant of the first (wish/variant.hpp), behind
/// them; of one that isn't found `fewer_because` says why. Rules: `found` is find_loops' answer to
/// this wish. Their certificates claim no bound.
void add_variants(const road::Roads& roads, const wish::Wish& wish, const hours::Setting& setting,
                  Effort effort, FindResult& found);

/// The instructor's own drive through points in order, with the same passes, times and checks.
FindResult route_through(const road::Roads& roads, const wish::Wish& wish,
                         const hours::Setting& setting);

/// The part of both loops' length that they share by way and direction, their first and last
/// exempt_m not counted; 0 to 1, of the shorter rest.
double shared_part(const wish::Loop& a, const wish::Loop& b, double exempt_m);

/// Why an area can't have a kind that it was built without (motorways, fords); else empty.
std::string built_without(const road::AreaInfo& info, road::Kind kind);

/// A chance near home, for `near`.
struct NearChance {
  ChanceId chance;
  double there_minutes = 0;  ///< likely, to its entry
  double back_minutes = 0;   ///< likely, home from its end
};
/// The nearest chances of a want by likely driving time, each place and movement once, within so
/// many minutes there. Sorted by time there, then place. Of a want with a verdict those bus lanes that
/// have it on arriving there at the likely minute.
struct NearAsk {
  const wish::Wish& wish;
  const wish::Want& want;
  double within_minutes = 0;
};
std::vector<NearChance> chances_near(const road::Roads& roads, const NearAsk& ask,
                                     const hours::Setting& setting);
/// When there are none: what the clock shuts in that time that keeps them away, in words ("Fore Street
/// is shut Monday to Friday, …"); empty when the clock is not to blame.
std::string kept_from_near(const road::Roads& roads, const NearAsk& ask,
                           const hours::Setting& setting);
/// … and the nearest starts, within four hours, at which it doesn't; at most two, in order of time.
std::vector<Instant> better_starts_near(const road::Roads& roads, const NearAsk& ask,
                                        const hours::Setting& setting);

}  // namespace loopwright::find
