// What a proof knows of one loop, and its checks, one file a topic.
//
// Rules: the checks run in the order below, each relying on those before it; each returns false at
// its first false claim, which is then in `claims`. Stretches, passes and bus lanes are numbered
// from 0 in the texts, as they are in the file.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/pace/pace.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"
#include "proof/bans.hpp"
#include "proof/caps.hpp"
#include "proof/claims.hpp"
#include "proof/part.hpp"

namespace loopwright::proof {

/// A pass the drive makes, and the place it is made at.
struct FoundPass {
  wish::Pass pass;
  PlaceId place;
};

/// One loop of the file, and what the area knows it as.
struct Drive {
  const road::Roads& roads;
  const wish::Wish& wish;
  const wish::Loop& loop;
  const hours::Setting& setting;
  std::vector<StretchId> stretches;  ///< of each row, once names_hold
  std::vector<Part> parts;           ///< of each row, from where it is entered, once parts_hold
  std::vector<FoundPass> passes;     ///< that it makes, once find_passes
  std::string of = {};               ///< ", way home from stretch 12" when it is one of the loop's
  std::size_t before = 0;            ///< of these, rows of the loop itself in front of it
};

/// "loop 1"
std::string at_loop(const Drive& drive);
/// "loop 1, stretch 14 (way 7)"
std::string at_stretch(const Drive& drive, std::size_t i);

// --- drive.cpp: the rows name roads of the area that follow each other -------------------------
bool names_hold(Drive& drive, Claims& claims);
bool parts_hold(Drive& drive, Claims& claims);
bool connection_holds(const Drive& drive, Claims& claims);

// --- ends.cpp: from the door and back ----------------------------------------------------------
bool ends_hold(const Drive& drive, Claims& claims);

// --- rules.cpp: every stretch and every turn may be driven -------------------------------------
bool access_holds(const Drive& drive, Claims& claims);
bool turns_hold(const Drive& drive, const Bans& bans, Claims& claims);

// --- lengths.cpp -------------------------------------------------------------------------------
/// Road driven a second time, either way, on pieces that carry all these flags.
double metres_twice(const Drive& drive, std::uint32_t only_with_flags);
/// The same of what the learner drives.
double practised_twice(const Drive& drive, std::uint32_t only_with_flags);
bool lengths_hold(const Drive& drive, Claims& claims);

// --- times.cpp: limits, times, the window ------------------------------------------------------
/// What driving and the stops before it take to a point of the drive.
struct Taken {
  pace::Spell driving;
  double stops_s = 0;
};
/// To the beginning of each row, and last to the end. Where the area has no such turn no delay counts.
std::vector<Taken> taken_before(const Drive& drive);
/// The area's row of the move from one stretch to the next; null when there is none.
const road::Turn* turn_between(const road::Roads& roads, StretchId from, StretchId to);
bool range_holds(const wish::Range& said, const Taken& taken, const std::string& where,
                 Claims& claims);
bool limit_holds(const Drive& drive, const pace::Pace& pace, std::size_t i, Claims& claims);
bool times_hold(const Drive& drive, Claims& claims);
bool window_holds(const Drive& drive, const Caps& caps, Claims& claims);

// --- by_the_hour.cpp: no street, gate or turn is driven at an hour at which it is, or may be, shut -
/// Seconds after the start at which a slow drive, one in ten is slower, has left row i.
double left_s(const Drive& drive, std::size_t i);
/// Moments with whole minutes on the clock.
struct Interval {
  Instant from, to;
};
/// The time in which nine drives in ten are on row i, widened to whole minutes.
Interval time_on(const Drive& drive, std::size_t i);
/// Rules: the times hold.
bool hours_hold(const Drive& drive, const Bans& bans, Claims& claims);

// --- passes.cpp: what the drive practises ------------------------------------------------------
/// Fills drive.passes.
void find_passes(Drive& drive);

// --- lane_verdicts.cpp: what holds on the bus lanes passed, at the time of passing ---------------
/// Gives each bus lane of drive.passes its verdict. Rules: the times hold.
void judge_lanes(Drive& drive);

// --- pass_claims.cpp: what is claimed to be practised is, and nothing is left out ----------------
bool passes_hold(const Drive& drive, Claims& claims);
bool bus_lanes_hold(const Drive& drive, Claims& claims);

// --- noted_facts.cpp: what the map doesn't have is borne out by a note ---------------------------
bool notes_hold(const Drive& drive, const NotedArea& area, Claims& claims);

// --- lesson.cpp: who drives, and the parts of a lesson ---------------------------------------------
/// The learner drives all of it, its entry too. Rules for these three: practice_holds.
bool is_practised(const Drive& drive, const wish::Pass& pass);
bool is_driven_by_learner(const Drive& drive, std::size_t row);
/// The part of the wish in which a pass begins; null when there is none.
const wish::Part* part_at(const Drive& drive, const wish::Pass& pass);
bool practice_holds(const Drive& drive, Claims& claims);
/// Rules: the passes are found, and the times and the practice hold.
bool lesson_parts_hold(const Drive& drive, const Caps& caps, Claims& claims);
/// A pass that is too hard for where it is in a lesson that was to be easy first; null when there is none.
const FoundPass* off_ramp(const Drive& drive, const Caps& caps);
bool ramp_is_told(std::span<const Drive> drives, const wish::Answer& answer, const Caps& caps,
                  Claims& claims);
// --- part_counts.cpp
bool part_counts_hold(const Drive& drive, std::size_t p, const Caps& caps, Claims& claims);
std::int64_t value_in_parts(const Drive& drive, const Caps& caps);

// --- counting.cpp: which passes count, and what they are worth -----------------------------------
/// Rules for all: the passes are found, and the times hold.
bool counts(const Drive& drive, const FoundPass& found, const wish::Want& want);
int counted(const Drive& drive, const wish::Want& want, const Caps& caps);
/// The passes named as practised count for the want, spaced and within the cap. Rules: passes_hold held.
bool practised_hold(const Drive& drive, const wish::Met& met, const Caps& caps, Claims& claims);
/// In milli-units, by the definition in DEVELOPERS.md. Rules: practised_hold held for all that is met.
std::int64_t value_of(const Drive& drive, const Caps& caps);

// --- keep_off.cpp: nothing is driven that the wish keeps off -------------------------------------
bool keep_offs_hold(const Drive& drive, Claims& claims);
/// Each loop takes what the wish says must be taken, or the shortfall says that it doesn't.
bool takes_are_told(std::span<const Drive> drives, const wish::Answer& answer, Claims& claims);

// --- quiet_streets.cpp: none more often than its cap, and what the ledger leaves -----------------
bool quiet_streets_hold(const Drive& drive, const Caps& caps, Claims& claims);

// --- wish.cpp: what was asked for ---------------------------------------------------------------
bool counts_hold(const Drive& drive, const Caps& caps, Claims& claims);
bool limits_of_wish_hold(const Drive& drive, const Caps& caps, Claims& claims);
bool certificate_holds(const Drive& drive, const Caps& caps, Claims& claims);

// --- pull_ups.cpp: where one may stop, what comes next after a hard pass, when to drive on --------
/// Rules: the times and the passes hold.
bool pull_ups_hold(const Drive& drive, Claims& claims);
// --- planned_stops.cpp
/// The planned stops that were asked for are there, or there is no place for them.
bool planned_stops_hold(const Drive& drive, Claims& claims);
/// How many of a loop's planned stops have no place. Rules: planned_stops_hold.
int without_place(const Drive& drive);

// --- independent.cpp: the stretch on which the learner finds the way ------------------------------
/// Rules: the times, the passes and the pull-ups hold.
bool independent_holds(const Drive& drive, Claims& claims);
/// One that is too short is told in the shortfall.
bool independent_is_told(std::span<const Drive> drives, const wish::Answer& answer, Claims& claims);

// --- variants.cpp: what a loop that is easier or harder than the first promises -------------------
/// The wish that a loop is checked by; empty for a variant that can't be.
std::optional<wish::Wish> wish_of_loop(const wish::Answer& answer, const wish::Loop& loop,
                                       const Caps& caps);
/// Rules: the passes of all loops hold.
bool variants_hold(const wish::Answer& answer, Claims& claims);

// --- ways_home.cpp
bool ways_home_hold(const Drive& drive, const Bans& bans, Claims& claims);

// --- answer.cpp: the loops together, and what they fall short of --------------------------------
bool area_holds(const road::Roads& roads, const wish::Answer& answer, Claims& claims);
bool loops_hold(const wish::Answer& answer, Claims& claims);
bool stops_are_told(std::span<const Drive> drives, const wish::Answer& answer, Claims& claims);
bool alternatives_hold(std::span<const Drive> drives, const Caps& caps, Claims& claims);
bool shortfall_holds(const road::Roads& roads, const wish::Answer& answer, Claims& claims);

}  // namespace loopwright::proof
