// Puts items into a walk until nothing more that is worth anything fits.
//
// Method (cheapest insertion by worth for time, as in the heuristics for orienteering; the noise in the
// manner of the blinks of Christiaens and Vanden Berghe 2020, "Slack induction by string removals";
// both from memory):
// 1. Every gap of the walk is compared with all items: the delay of the end that putting the item there
//    brings, spacing reckoned with the nearest visits before and after for each goal.
// 2. One or two items by chance may go first, so that what is cheap doesn't always keep out what is good.
// 3. The items with most gain for their delay, gain being what is missing first and worth second, are
//    tried on the clock; the best that really gives more is put in.
// 4. Only the two gaps that are new are compared again, and the items whose best gap is gone.
#pragma once

#include <algorithm>
#include <vector>

#include "circuit/search_tour.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::circuit {

/// How one filling judges.
struct Taste {
  static constexpr std::size_t no_goal = ~std::size_t{0};
  /// Squared: worth before time; rooted: short ways before worth.
  enum class Power { plain, squared, rooted } power = Power::plain;
  std::size_t first_goal = no_goal;  ///< what is missing for it comes before all else
  int any_first = 0;                 ///< items that fit, by chance, put in before
  double noise = 0;                  ///< 0 to 1: how much chance may take off an item's score
};

/// Rules: scratch memory is kept between calls; one per thread.
class Inserter {
 public:
  Inserter(const Items& items, Clock& clock);
  /// Returns the score of the walk it leaves. Rules: the walk it is given fits, or is empty.
  Score fill(std::vector<Visit>& visits, const Taste& taste, Dice& dice);

 private:
  /// One gap. Times from the leaving of the visit before it.
  struct Gap {
    const std::int32_t* to = nullptr;     ///< by item
    const std::int32_t* from = nullptr;   ///< by item
    const std::int32_t* ready = nullptr;  ///< by spaced set: an item may begin so late only
    const std::int32_t* after =
        nullptr;              ///< by spaced set: the next visit may, after the item's beginning
    std::int32_t length = 0;  ///< to the beginning of the next visit, and what later waits absorb
  };
  struct Try {
    std::uint32_t item = 0;
    double rate = 0;
  };
  struct Candidate {
    Visit visit;
    std::uint32_t gap = 0;
    double rate = 0;
  };

  void open_items(const Taste& taste, Dice& dice);
  void gauge(std::span<const Visit> visits, const Taste& taste);
  void gauge_gains(const Taste& taste);
  void gauge_gaps(std::span<const Visit> visits);
  void gauge_before(std::span<const Visit> visits);
  void gauge_after(std::span<const Visit> visits);
  [[nodiscard]] double gain_of(const Item& item, const Taste& taste) const;
  [[nodiscard]] std::int32_t delay(const Gap& gap, std::uint32_t item) const {
    const std::uint32_t set = spaced_set_[item];
    const std::int32_t begins = std::max(gap.to[item], gap.ready[set]);
    return std::max(0, begins + std::max(gap.from[item], gap.after[set]) - gap.length);
  }
  void compare(std::uint32_t number);
  void compare_after(std::uint32_t number);
  void choose_tries();
  [[nodiscard]] Candidate best_try(std::vector<Visit>& visits, const Taste& taste);
  void try_item(std::vector<Visit>& visits, std::uint32_t item, Candidate& best,
                const Taste& taste);
  void put(std::vector<Visit>& visits, const Candidate& candidate, const Taste& taste);
  void put_any(std::vector<Visit>& visits, const Taste& taste, Dice& dice);
  bool put_best(std::vector<Visit>& visits, const Taste& taste);
  [[nodiscard]] std::int64_t spare() const {
    return std::min<std::int64_t>(items_.problem.most_ms, far_ms - 1) - now_.ms;
  }
  void close_tries();

  const Items& items_;
  Clock& clock_;
  bool spaced_ = false;  ///< some goal is
  bool exact_ = false;   ///< gains and delays are what the clock will say
  double grain_ms_ = 1;
  double missing_gain_ = 1;
  Score now_;
  VisitTimes times_;
  std::vector<Gap> gaps_;
  std::vector<std::uint32_t> spaced_set_;        ///< by item
  std::vector<std::int32_t> ready_, after_;      ///< by gap and spaced set
  std::vector<std::uint32_t> open_;              ///< items that may still be put in
  std::vector<double> gain_, weighed_, chance_;  ///< by item
  std::vector<std::int32_t> best_delay_;         ///< by item
  std::vector<std::uint32_t> best_gap_;          ///< by item
  std::vector<Try> tries_;
  std::vector<std::int64_t> goal_ms_;
};

}  // namespace loopwright::circuit
