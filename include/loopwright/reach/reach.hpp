// Where one can get to in time: snapping to the roads, and bounded shortest-time searches over the
// turn graph, forwards and backwards, by Boost.Graph.
//
//   Sweep from_home(roads); from_home.run(leaving(roads, pace, snap), costs, minutes_60);
//   if (from_home.reached(state)) use(from_home.ms(state));
//
// Meaning: forwards, the time of a state is when the END of its stretch is reached; backwards, it
// is the time from the START of its stretch to the goal.
// Rules: a Sweep is scratch for one thread and may be run again and again; roads must outlive it.
// Equal times are settled in order of state number, so results don't depend on the platform.
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "loopwright/base/paged.hpp"
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

/// Every state of a stretch: the plain one, then its copies.
std::vector<StateId> states_of(const road::Roads& roads, StretchId stretch);

/// The copies of stretches, by stretch: for many lookups.
class StretchCopies {
 public:
  explicit StretchCopies(const road::Roads& roads);
  [[nodiscard]] std::span<const StateId> of(StretchId stretch) const;

 private:
  std::vector<StretchId> stretches_;  ///< ascending
  std::vector<StateId> states_;       ///< of each of these
};

/// The turn graph turned round. Moves are looked up as they are asked for, and kept.
/// Rules: for one thread; roads must outlive it.
class Backwards {
 public:
  explicit Backwards(const road::Roads& roads);
  struct Move {
    StateId from;
    std::uint32_t turn = 0;  ///< row in roads.turns
  };
  /// The moves that lead into a state. Rules: until this is asked for another.
  [[nodiscard]] std::span<const Move> into(StateId s) const;
  /// The same as rows of `move`, the last one not included.
  [[nodiscard]] std::pair<std::uint32_t, std::uint32_t> rows_into(StateId s) const;
  [[nodiscard]] const Move& move(std::uint32_t row) const { return moves_[row]; }

 private:
  void add_moves(StretchId before, StateId s) const;
  const road::Roads& roads_;
  StretchCopies copies_;
  /// By state: its rows of moves_; end 0: not yet looked up.
  mutable Paged<std::uint32_t> first_, end_;
  mutable std::vector<Move> moves_;
};

/// Where the car may be turned round: at the end of any road one may drive, of any but a service road, or at none.
enum class TurningRound : std::uint8_t { anywhere, where_streets_end, nowhere };

/// What driving costs, in likely milliseconds, and what may not be driven. A stretch is given its price when it
/// is first asked for, so that a few roads of a large map cost as little as on a small one.
/// Rules: for one thread; roads must outlive it.
class Costs {
 public:
  /// Every drivable stretch at its likely time, nothing shut.
  Costs(const road::Roads& roads, const pace::Pace& pace);
  /// The roads by their lengths: a stretch costs its length in millimetres where all else here speaks of
  /// milliseconds, and turns cost nothing but turning round at a dead end. For what asks how far and not how long.
  static Costs by_length(const road::Roads& roads, double turn_round_m);

  /// Negative: may not be driven.
  [[nodiscard]] std::int32_t along_ms(StretchId stretch) const {
    const std::int32_t known = stretch_ms_[stretch.index()];
    return known != unknown ? known : price(stretch);
  }
  [[nodiscard]] bool may_drive(StretchId stretch) const { return along_ms(stretch) >= 0; }
  /// turn: row in roads.turns.
  [[nodiscard]] bool is_banned(std::size_t turn) const {
    return banned_[turn] != 0 || (turning_ != TurningRound::anywhere && is_turning_banned(turn));
  }
  [[nodiscard]] std::int32_t wait_ms(road::Control control) const {
    return control_ms_[static_cast<std::size_t>(control)];
  }

  void shut(StretchId stretch) { stretch_ms_.at(stretch.index()) = -1; }
  /// Both directions.
  void shut(PieceId piece);
  /// As in other costs.
  void open_as_in(const Costs& other, StretchId stretch) {
    stretch_ms_.at(stretch.index()) = other.along_ms(stretch);
  }
  void ban(std::size_t turn) { banned_.at(turn) = 1; }
  /// Where roads end, from now on.
  void let_turn_round(TurningRound where) { turning_ = where; }
  /// Shuts every stretch of which `keeps` isn't true.
  void keep_to(std::function<bool(StretchId)> keeps);

 private:
  static constexpr std::int32_t unknown = std::numeric_limits<std::int32_t>::min();
  explicit Costs(const road::Roads& roads);
  std::int32_t price(StretchId stretch) const;
  [[nodiscard]] bool is_turning_banned(std::size_t turn) const;
  const road::Roads* roads_;
  std::optional<pace::Pace> pace_;  ///< none: by length
  std::function<bool(StretchId)> keeps_;
  TurningRound turning_ = TurningRound::anywhere;
  mutable Paged<std::int32_t> stretch_ms_;
  Paged<std::uint8_t> banned_;
  std::array<std::int32_t, road::control_count> control_ms_{};
};

class Sweep;

struct SweepLimits {
  std::int64_t limit_ms = 0;  ///< time beyond which nothing is settled
  /// A sweep that ran the other way: what both times together lead beyond the limit is left out …
  const Sweep* meeting = nullptr;
  /// … of the states whose stretch lies wholly beyond this time.
  std::int64_t meeting_after_ms = 0;
  /// Searching ends when all of these are settled; empty: it doesn't. Ascending, each once.
  std::span<const StateId> until = {};

  // NOLINTNEXTLINE(google-explicit-constructor): a bare time is what most callers give.
  SweepLimits(std::int64_t most_ms) : limit_ms(most_ms) {}
  SweepLimits(std::int64_t most_ms, const Sweep* other_way, std::int64_t after_ms)
      : limit_ms(most_ms), meeting(other_way), meeting_after_ms(after_ms) {}
};

/// One bounded search over all states.
class Sweep {
 public:
  /// backwards may be null when run_back is never called.
  explicit Sweep(const road::Roads& roads, const Backwards* backwards = nullptr);
  ~Sweep();
  Sweep(Sweep&&) noexcept;
  Sweep& operator=(Sweep&&) noexcept;

  void run(std::span<const Seed> seeds, const Costs& costs, const SweepLimits& limits);
  void run_back(std::span<const Seed> seeds, const Costs& costs, const SweepLimits& limits);

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

/// Sweeps both ways over just the states of the drives from a seed to a goal that last at most limit_ms; back must
/// be able to run back.
void sweep_between(Sweep& out, Sweep& back, std::span<const Seed> seeds,
                   std::span<const Seed> goals, const Costs& costs, std::int64_t limit_ms);

}  // namespace loopwright::reach
