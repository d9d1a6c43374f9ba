// What the clock shuts while a wish is driven: streets and turns that become walls of the search.
//
//   ClockWalls walls(roads, wish, setting);   walls.apply(roads, costs);
//   walls.learn(lanes::breaches_on(roads, loop, setting));   // true: search again
//
// Rules: what is never settled open within the lesson is a wall from the start; what is open all
// through it is left alone; the rest stays open until a drive meets it shut, then it is a wall too.
// After `most_rounds` everything that may be shut at any minute is.
// Why: a street shut by the clock is never driven when it may be shut; times are known only when the
// drive is.
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/lanes/passage.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

class ClockWalls {
 public:
  static constexpr int most_rounds = 4;

  ClockWalls(const road::Roads& roads, const wish::Wish& wish, const hours::Setting& setting);
  /// Shuts the walls known so far.
  void apply(const road::Roads& roads, reach::Costs& costs) const;
  /// Makes walls of what a drive met shut. Called round after round; the fourth shuts all that may be.
  void learn(const std::vector<lanes::Breach>& breaches);
  /// Something near is shut for a part of the lesson: each drive must be looked at.
  [[nodiscard]] bool some_at_times() const {
    return !mixed_streets_.empty() || !mixed_turns_.empty();
  }
  [[nodiscard]] bool is_last_round() const { return rounds_ >= most_rounds; }
  /// Everything that may be shut at some minute of the lesson becomes a wall.
  void shut_all();
  /// "Fore Street is shut Monday to Friday, …; …" of the walls; empty when there are none.
  [[nodiscard]] std::string words(const road::Roads& roads) const;
  /// Why a piece may not be driven, if the clock is why; else empty.
  [[nodiscard]] std::string words_of(const road::Roads& roads, PieceId piece) const;

 private:
  std::vector<std::uint32_t> shut_streets_, mixed_streets_;  ///< rows of timed_rules
  std::vector<std::uint32_t> shut_turns_, mixed_turns_;      ///< rows of turn_rules
  int rounds_ = 0;
};

}  // namespace loopwright::find
