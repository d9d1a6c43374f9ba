// Where one can get to in time: the turn graph as the Boost.Graph library sees it, snapping to the
// roads, and bounded shortest-time searches forwards and backwards.
//
//   Sweep from_home(graph); from_home.run(starts_of(roads, pace, snap), minutes(60));
//   if (from_home.reached(state)) use(from_home.ms(state));
//
// Meaning: the time of a state is the time at which the END of its stretch is reached.
// Rules: a Sweep is scratch for one thread and may be run again and again; graph and pace must
// outlive it. Ties are broken by the lower state number, so results don't depend on the platform.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "loopwright/pace/pace.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::reach {

/// A place on a road: metres from the piece's first node.
struct Snap {
  PieceId piece;
  double along_m = 0;
  double off_m = 0;
  Point at;
};

/// Nearest road that a learner may drive through, within max_m (DECISIONS: 150); never a driveway
/// or aisle; service roads only when no other road is within max_m. Empty when there is none.
std::optional<Snap> snap_home(const road::Roads& roads, Point at, double max_m = 150);
/// Nearest such road however far (up to 20 km), for the hint; empty when none.
std::optional<Snap> nearest_road(const road::Roads& roads, Point at);

/// Where a search begins: a state, and the time at which its end is reached.
struct Seed {
  StateId state;
  std::int64_t ms = 0;
};
/// Leaving a snapped place in every direction the road allows.
std::vector<Seed> leaving(const road::Roads& roads, const pace::Pace& pace, const Snap& snap);
/// Arriving at a snapped place: the states that run into it, with the time from the START of that
/// state's stretch to the place.
std::vector<Seed> arriving(const road::Roads& roads, const pace::Pace& pace, const Snap& snap);

/// Moves into a state, for searching backwards. Built once per Roads (about 2 ms a town).
class Backwards {
 public:
  explicit Backwards(const road::Roads& roads);
  struct Move {
    StateId from;
    std::uint32_t turn;  ///< row in roads.turns
  };
  [[nodiscard]] std::span<const Move> into(StateId s) const;
  /// Copies of a stretch among the states, the plain one not included.
  [[nodiscard]] std::span<const StateId> copies_of(StretchId s) const;

 private:
  std::vector<std::uint32_t> first_;
  std::vector<Move> moves_;
  std::vector<std::uint32_t> copy_first_;
  std::vector<StateId> copies_;
};

/// What a search may use and what each thing costs, in milliseconds (usually Pace, with penalties).
struct Costs {
  std::function<std::int64_t(StateId)> stretch;  ///< negative: may not be driven
  std::function<std::int64_t(StateId, const road::Turn&)> turn;  ///< negative: may not be made
};

/// One bounded search over the states, by Boost.Graph's Dijkstra.
class Sweep {
 public:
  Sweep(const road::Roads& roads, const Backwards& backwards);
  ~Sweep();
  Sweep(Sweep&&) noexcept;
  Sweep& operator=(Sweep&&) noexcept;

  /// Forwards: ms(s) = least time at which the end of s is reached from the seeds.
  void run(std::span<const Seed> seeds, const Costs& costs, std::int64_t limit_ms);
  /// Backwards: ms(s) = least time from the START of s to the place the seeds arrive at.
  void run_back(std::span<const Seed> seeds, const Costs& costs, std::int64_t limit_ms);

  [[nodiscard]] bool reached(StateId s) const;
  [[nodiscard]] std::int64_t ms(StateId s) const;  ///< Rules: reached(s)
  /// The state before (forwards) or after (backwards) this one; none at a seed.
  [[nodiscard]] StateId parent(StateId s) const;
  /// States reached, in the order they were settled.
  [[nodiscard]] std::span<const StateId> settled() const;
  /// Path from a seed to s (forwards) or from s to a seed (backwards), both included.
  [[nodiscard]] std::vector<StateId> path(StateId s) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace loopwright::reach
