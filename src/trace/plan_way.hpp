// The way a plan takes from one of its stretches to another: what was driven while nothing was recorded, when it fits
// the time.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::trace {

/// Fixes farther apart than this leave unseen what lies between. Ours.
inline constexpr double unseen_after_s = 20;

/// A state and metres from where its stretch is entered.
struct Spot {
  StateId state;
  double along_m = 0;
};

struct PlanWay {
  std::vector<StateId> states;  ///< behind that of `from`, that of `to` the last
  double misfit =
      0;  ///< how much slower or quicker than usual it would have been: the logarithm of a factor
};

class PlanWays {
 public:
  PlanWays(const road::Roads& roads, std::span<const StretchId> plan)
      : roads_(roads), plan_(plan.begin(), plan.end()) {}

  [[nodiscard]] bool empty() const { return plan_.empty(); }
  /// The row of a stretch, when the plan was driven up to `row`: the next that has it, else `row`.
  [[nodiscard]] std::size_t follow(std::size_t row, StretchId stretch) const;
  /// By legal turns, from that row on; of several the one that fits best. None when none could have been driven in that
  /// time, or the row is another stretch's.
  [[nodiscard]] std::optional<PlanWay> between(std::size_t row, const Spot& from, const Spot& to,
                                               double seconds) const;

 private:
  const road::Roads& roads_;
  std::vector<StretchId> plan_;
};

}  // namespace loopwright::trace
