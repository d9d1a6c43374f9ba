// The likeliest places of the car at a row of fixes: Viterbi's algorithm over candidates, by the probabilities of
// Newson and Krumm.
//
//   Chain chain(router, noise);   chain.begin(0, fixes[0]);   if (chain.go_on(1, fixes[1])) …   chain.best();
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "loopwright/trace/match.hpp"
#include "trace/candidates.hpp"
#include "trace/plan_way.hpp"
#include "trace/router.hpp"
#include "trace/telling.hpp"

namespace loopwright::trace {

/// Where the car was at a fix, by the best chain.
struct Chosen {
  std::size_t fix = 0;  ///< index into the fixes
  StateId state;
  double along_m = 0, off_m = 0;
  bool turned_round = false;  ///< at the fix of the one before, to this state
  std::vector<StateId> by_plan =
      {};  ///< the way here, when it is the plan's: nothing was recorded meanwhile
};

/// Longer than any way between two fixes that isn't out of the question; also used to find the way again.
double most_way_m(const Noise& noise, const Telling& from, const Telling& to);

/// What turning round is held to be as unlikely as: a way so much longer than the straight distance.
double turn_round_m(const Noise& noise);

/// A car that stands may seem to go back so far by the noise of its fixes.
double most_back_m(const Noise& noise);

class Chain {
 public:
  /// plan: as MatchAsk has it; ways: of the same.
  Chain(Router& router, const Noise& noise, std::span<const StretchId> plan, const PlanWays& ways);

  /// False when no road is near: nothing has begun then.
  bool begin(std::size_t row, const Telling& fix);
  /// False when no way leads to it: as if it hadn't been asked. Rules: begun.
  bool go_on(std::size_t row, const Telling& fix);
  [[nodiscard]] bool begun() const { return !steps_.empty(); }
  [[nodiscard]] const Telling& last() const { return steps_.back().fix; }
  /// Of the fixes so far, in driving order; a turning round is a row of its own.
  [[nodiscard]] std::vector<Chosen> best() const;
  void clear() { steps_.clear(); }

 private:
  struct Seat {
    StateId state;
    double along_m = 0, off_m = 0;
    double score = 0;  ///< logarithm of the likelihood of the best chain that ends here
    int before = -1;   ///< seat of the step before, or of this one when the car turned round
    bool turned = false;
    bool by_plan = false;      ///< from the seat before
    std::size_t plan_row = 0;  ///< up to which the plan was driven
    bool alive = true;
  };
  struct Step {
    std::size_t row = 0;
    Telling fix;
    std::vector<Seat> seats;
  };
  struct Move;

  [[nodiscard]] double emission(const Candidate& candidate) const;
  void spread(const Step& from, int seat, const Move& move, Step& to);
  void spread_by_plan(const Step& from, int seat, Step& to) const;
  void follow_plan(Step& step) const;
  [[nodiscard]] std::vector<StateId> way_by_plan(std::size_t step, const Seat& to) const;
  void settle(const std::vector<Candidate>& candidates, Step& step) const;

  Router& router_;
  Noise noise_;
  std::vector<StretchId> planned_;  ///< ascending
  const PlanWays& plan_ways_;
  std::vector<Step> steps_;
  std::vector<StateId> goals_;
};

}  // namespace loopwright::trace
