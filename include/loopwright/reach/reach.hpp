// Where one can get to in time: snapping to the roads, and bounded shortest-time searches over the
// turn graph, forwards and backwards, by Boost.Graph.
//
//   Sweep from_home(roads); from_home.run(leaving(roads, pace, snap), costs.view(), minutes_60);
//   if (from_home.reached(state)) use(from_home.ms(state));
//
// Meaning: forwards, the time of a state is when the END of its stretch is reached; backwards, it
// is the time from the START of its stretch to the goal.
// Rules: a Sweep is scratch for one thread and may be run again and again; roads must outlive it.
// Equal times are settled in order of state number, so results don't depend on the platform.
#pragma once

#include <array>
#include <cstdint>
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

/// Nearest road that a learner may drive through, within max_m (DEVELOPERS.md: 150); a plain service
/// road only when no other road is within max_m. Empty when there is none.
std::optional<Snap> snap_home(const road::Roads& roads, Point at, double max_m = 150);
/// Nearest such road up to 20 km away, for a hint; empty when none.
std::optional<Snap> nearest_road(const road::Roads& roads, Point at);

/// Where a search begins: a state and its time (see Meaning above).
struct Seed {
  StateId state;
  std::int64_t ms = 0;
};
/// Leaving a snapped place in every direction the road allows.
std::vector<Seed> leaving(const road::Roads& roads, const pace::Pace& pace, const Snap& snap);
/// Arriving at a snapped place; copies of its stretches included.
std::vector<Seed> arriving(const road::Roads& roads, const pace::Pace& pace, const Snap& snap);

/// The turn graph turned round, and the copies of each stretch. Built once per Roads.
class Backwards {
 public:
  explicit Backwards(const road::Roads& roads);
  struct Move {
    StateId from;
    std::uint32_t turn = 0;  ///< row in roads.turns
  };
  [[nodiscard]] std::span<const Move> into(StateId s) const;
  /// The columns behind `into`: states + 1 first rows, and all moves.
  [[nodiscard]] std::span<const std::uint32_t> firsts() const { return first_; }
  [[nodiscard]] std::span<const Move> moves() const { return moves_; }

 private:
  std::vector<std::uint32_t> first_;
  std::vector<Move> moves_;
};

/// Every state of a stretch: the plain one, then its copies.
std::vector<StateId> states_of(const road::Roads& roads, StretchId stretch);

/// What driving costs, in milliseconds, and what may not be driven. Columns by row number.
struct Costs {
  std::vector<std::int32_t> stretch_ms;   ///< by stretch; negative: may not be driven
  std::vector<std::uint8_t> turn_banned;  ///< by turn row; empty: none is
  std::array<std::int32_t, road::control_count> control_ms{};
};
/// Every drivable stretch at its likely time, nothing banned.
Costs costs_of(const road::Roads& roads, const pace::Pace& pace);

/// One bounded search over all states.
class Sweep {
 public:
  /// backwards may be null when run_back is never called.
  explicit Sweep(const road::Roads& roads, const Backwards* backwards = nullptr);
  ~Sweep();
  Sweep(Sweep&&) noexcept;
  Sweep& operator=(Sweep&&) noexcept;

  void run(std::span<const Seed> seeds, const Costs& costs, std::int64_t limit_ms);
  void run_back(std::span<const Seed> seeds, const Costs& costs, std::int64_t limit_ms);

  [[nodiscard]] bool reached(StateId s) const;
  [[nodiscard]] std::int64_t ms(StateId s) const;  ///< Rules: reached(s)
  /// States reached, in the order they were settled.
  [[nodiscard]] std::span<const std::uint32_t> settled() const;
  /// The drive between a seed and s, in driving order, both included. Rules: reached(s)
  [[nodiscard]] std::vector<StateId> path(StateId s) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace loopwright::reach
