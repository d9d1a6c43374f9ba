// A lesson loop as a problem of its own, without roads: passes to be driven, the legs between them, and
// what the passes are worth. The published problem nearest to it is orienteering (a closed walk from a
// depot within a length, most score); here passes may repeat, at a worth that falls.
//
//   Problem p = …;   Evaluation e = evaluate(p, walk);   // circuit.hpp finds and bounds walks
//
// Meaning: a walk leaves home, drives passes one after the other, and ends at the end:
//   time = leg(home, entry) + inner + leg(exit, entry) + inner + … + leg(exit, end), with waits.
// A pass is begun at its entry and left at its exit; several passes share entries and exits. A chance
// that begins inside another's way is a second row of that other, with an exit of its own from which the
// only leg leads there.
// Rules: times in milliseconds, worths in milli-units, both whole numbers, none negative. Plain data;
// const while a search runs, shared by threads.
// Why not a plain matrix of passes: a roundabout of four arms has 16 passes and only 4 entries and exits.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

namespace loopwright::circuit {

/// No leg: it can't be driven, or not within the time.
inline constexpr std::int64_t no_way = std::numeric_limits<std::int64_t>::max() / 4;

/// No cap of Problem::caps.
inline constexpr std::uint32_t no_cap = std::numeric_limits<std::uint32_t>::max();

/// Passes of a group are repeats of each other: of one place and movement, say.
struct Group {
  std::uint32_t goal = 0;
  /// Of the first counted pass, the second, …; not rising. Further ones are worth nothing. Empty: the
  /// group is only counted.
  std::vector<std::int64_t> worths = {};
  /// So many passes count towards the goal's `least`, further ones don't.
  int most_counted = std::numeric_limits<int>::max();
  std::uint32_t cap = no_cap;  ///< row of Problem::caps: of one place, say, whatever the movement
};

/// What is wanted, over the groups that name it.
struct Goal {
  /// So many must be driven: hard. 0: none must.
  int least = 0;
  /// A pass has worth for this goal only when it begins so long after the last that had; 0: always.
  /// `least` counts without it.
  std::int64_t spacing_ms = 0;
};

struct Pass {
  std::uint32_t entry = 0, exit = 0;
  std::int64_t inner_ms = 0;  ///< from the beginning of the entry to the exit, stops included
  std::vector<std::uint32_t> groups;  ///< it counts for, each of another goal, or of none
};

/// The times a leg may take when it must take more than its quickest: a car can't stand still, it can only go
/// another way.
struct LongerLegs {
  struct Span {
    std::int32_t from_ms = 0, to_ms = 0;  ///< both included
  };
  /// By exit · entry_count + entry, and one behind the last: the first row of its spans. Empty, as is a leg
  /// without spans: any time from the quickest on.
  std::vector<std::uint32_t> first = {};
  std::vector<Span> spans = {};  ///< of each leg ascending, apart from each other
};

/// Rules: `legs` has (exit_count + 1) rows of (entry_count + 1): the last row is home, the last column
/// the end. Legs keep the triangle: none is longer than one through a pass between.
struct Problem {
  std::uint32_t entry_count = 0, exit_count = 0;
  std::vector<std::int64_t> legs;
  std::vector<Pass> passes;
  std::vector<Group> groups;
  std::vector<Goal> goals;
  std::vector<int> caps = {};  ///< so many passes have worth of all groups that name it
  std::int64_t most_ms = 0;    ///< a walk takes at most so long
  LongerLegs longer = {};

  [[nodiscard]] std::uint32_t home() const { return exit_count; }
  [[nodiscard]] std::uint32_t end() const { return entry_count; }
  [[nodiscard]] std::int64_t leg(std::uint32_t exit, std::uint32_t entry) const {
    return legs[static_cast<std::size_t>(exit) * (entry_count + 1) + entry];
  }
  /// The least time that the leg may take and that is no less than least_ms; no_way: none of its spans has one.
  [[nodiscard]] std::int64_t longer_leg(std::uint32_t exit, std::uint32_t entry,
                                        std::int64_t least_ms) const;
};

/// Rows of Problem::passes in driving order, and how long the walk dawdles on the leg to each (a way
/// round that only passes the time, so that the pass is spaced).
struct Walk {
  std::vector<std::uint32_t> passes;
  std::vector<std::int64_t> wait_ms;  ///< as many as passes
  friend bool operator==(const Walk&, const Walk&) = default;
};

/// What a walk comes to.
struct Evaluation {
  std::int64_t ms = 0;     ///< no_way when some leg can't be driven
  std::int64_t value = 0;  ///< worth of the passes, spaced
  std::vector<int> got;    ///< by goal, towards `least`
  int missing = 0;         ///< of all goals, up to `least`
};

/// Counts a walk by the definition; the first pass that may have worth for a goal takes it (greedily, as
/// the lesson is driven). Rules: rows exist.
Evaluation evaluate(const Problem& problem, const Walk& walk);

}  // namespace loopwright::circuit
