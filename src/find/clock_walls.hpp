// What the clock shuts while a wish is driven: streets and turns that become walls of the search.
//
//   ClockWalls walls(roads, wish, setting);   walls.apply(roads, costs);
//   walls.learn(lanes::breaches_on(roads, loop, setting));   // then search again
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

/// A rule with hours that shuts something: its row of timed_rules, or of turn_rules.
struct Wall {
  lanes::BreachOf of = lanes::BreachOf::street;
  std::uint32_t rule = 0;
  friend bool operator==(const Wall&, const Wall&) = default;
};

class ClockWalls {
 public:
  static constexpr int most_rounds = 4;

  /// The window is the minutes of the lesson and more, since its times aren't known yet.
  ClockWalls(const road::Roads& roads, const wish::Wish& wish, const hours::Setting& setting);
  /// The same with a window of one's own, in whole minutes.
  ClockWalls(const road::Roads& roads, const wish::Wish& wish, const hours::Setting& setting,
             const lanes::Passing& window);
  /// Shuts the walls known so far.
  void apply(const road::Roads& roads, reach::Costs& costs) const;
  /// Makes walls of what a drive met shut. Called round after round; the fourth shuts all that may be.
  void learn(const std::vector<lanes::Breach>& breaches);
  /// Something near is shut for a part of the lesson: each drive must be looked at.
  [[nodiscard]] bool some_at_times() const { return !mixed_.empty(); }
  /// Some wall may be open at the minute another drive would pass it: what the search finds then bounds no drive but
  /// its own.
  [[nodiscard]] bool has_learnt() const { return rounds_ > 0; }
  [[nodiscard]] bool is_last_round() const { return rounds_ >= most_rounds; }
  /// Everything that may be shut at some minute of the lesson becomes a wall.
  void shut_all();

  /// The walls known so far, each once.
  [[nodiscard]] const std::vector<Wall>& walls() const { return shut_; }
  /// The same lesson with these walls alone.
  [[nodiscard]] ClockWalls with_only(std::vector<Wall> walls) const;
  [[nodiscard]] const lanes::Passing& window() const { return window_; }

 private:
  void shut(const Wall& wall);

  lanes::Passing window_;
  std::vector<Wall> shut_;
  std::vector<Wall> mixed_;
  int rounds_ = 0;
};

}  // namespace loopwright::find
