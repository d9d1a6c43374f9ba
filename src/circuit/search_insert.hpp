// Puts items into a walk until nothing more that is worth anything fits.
//
// Method (cheapest insertion by worth for time, as in the heuristics for orienteering; the noise in the
// manner of the blinks of Christiaens and Vanden Berghe 2020, "Slack induction by string removals";
// both from memory):
// 1. Every gap of the walk is compared with all items: the delay of the end that putting the item there
//    brings, spacing reckoned with the nearest visits before and after for each goal.
// 2. The items with most gain for their delay, gain being what is missing first and worth second, are
//    tried on the clock; the best that really gives more is put in.
// 3. Only the two gaps that are new are compared again, and the items whose best gap is gone.
#pragma once

#include <vector>

#include "circuit/search_tour.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::circuit {

/// How one filling judges.
struct Taste {
  double gain_power = 1;  ///< over 1: worth before time; under: short ways before worth
  double noise = 0;       ///< 0 to 1: how much chance may take off an item's score
};

/// Rules: scratch memory is kept between calls; one per thread.
class Inserter {
 public:
  Inserter(const Items& items, Clock& clock);
  /// Returns the score of the walk it leaves. Rules: the walk it is given fits, or is empty.
  Score fill(std::vector<Visit>& visits, const Taste& taste, Dice& dice);

 private:
  struct Try {
    std::uint32_t item = 0;
    double score = 0;
  };
  struct Candidate {
    Visit visit;
    std::size_t gap = 0;
    Score score;
  };

  void look_at(std::span<const Visit> visits);
  void gauge_gap(std::span<const Visit> visits, std::size_t gap);
  void compare(std::size_t gap);
  void compare_after(std::size_t gap);
  void find_lost(std::size_t gap);
  void gauge_gains();
  void gauge_spacing(std::span<const Visit> visits);
  void choose_tries(const Taste& taste);
  bool put_best(std::vector<Visit>& visits, const Taste& taste);
  void try_item(std::vector<Visit>& visits, std::uint32_t item, Candidate& best, double& best_rate,
                const Taste& taste);
  [[nodiscard]] std::int64_t delay(std::size_t gap, std::uint32_t item) const;
  [[nodiscard]] double rate(double gain, std::int64_t ms, const Taste& taste) const;

  /// One gap, times relative to the leaving of the visit before it.
  struct Gap {
    const std::int32_t* to = nullptr;
    const std::int32_t* from = nullptr;
    std::int64_t length = 0;    ///< to the beginning of the next visit
    std::int64_t absorbed = 0;  ///< of a delay there, by later waits
  };

  const Items& items_;
  Clock& clock_;
  double grain_ms_ = 1;
  double missing_gain_ = 1;
  Score now_;
  Times times_;
  std::vector<Gap> gaps_;
  std::vector<std::int64_t> ready_, after_;  ///< by gap and spaced set
  std::vector<double> gain_, chance_;        ///< by item
  std::vector<std::int64_t> best_delay_;
  std::vector<std::uint32_t> best_gap_;
  std::vector<std::uint8_t> blocked_;
  std::vector<Try> tries_;
  std::vector<std::int64_t> goal_ms_;
};

}  // namespace loopwright::circuit
