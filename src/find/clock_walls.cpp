// 1. The lesson's window is its minutes and a quarter, and fifteen more; three hours without minutes.
// 2. A rule open all through it is left alone. Else each minute is asked: none open makes a wall.
// 3. Rules farther from home than a car gets in the window are left alone; the drive is checked anyway.
// 4. A "no" shuts the last move of its path; an "only" over one node every other move; a longer one
//    the move into its path.
#include "find/clock_walls.hpp"

#include <algorithm>

#include "find/turn_bans.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::find {
namespace {

using hours::Tri;
using lanes::BreachOf;

constexpr double fastest_mps = 33;  // above every limit: 70 mph is 31.3 m/s

enum class Shut : std::uint8_t { never, at_times, always };

lanes::Passing window_of(const wish::Wish& wish, const hours::Setting& setting) {
  const std::int64_t seconds =
      wish.minutes ? std::int64_t{75} * *wish.minutes + 900 : 60 * wish::own_drive_minutes;
  return lanes::whole_minutes(
      {setting.on_clock(wish.start), setting.on_clock(wish.start.plus_seconds(seconds))});
}

/// free(passing) is the answer "may be driven" for an interval.
template <class Free>
Shut shut_in(const lanes::Passing& window, const hours::Setting& setting, Free free) {
  if (free(window)) return Shut::never;
  for (std::int64_t s = window.from.unix_s; s <= window.to.unix_s; s += 60) {
    const Instant minute = setting.on_clock({s, 0});
    if (free(lanes::Passing{minute, minute})) return Shut::at_times;
  }
  return Shut::always;
}

void shut_turns(const road::Roads& roads, const road::TurnRule& rule, TurnBans& bans) {
  const auto path = roads.path_of(rule);
  if (rule.only == 0)
    bans.shut(path[path.size() - 2], path.back());
  else if (path.size() == 2)
    bans.shut_all_but(path[0], path[1]);
  else
    bans.shut(path[0], path[1]);
}

}  // namespace

ClockWalls::ClockWalls(const road::Roads& roads, const wish::Wish& wish,
                       const hours::Setting& setting)
    : ClockWalls(roads, wish, setting, window_of(wish, setting)) {}

ClockWalls::ClockWalls(const road::Roads& roads, const wish::Wish& wish,
                       const hours::Setting& setting, const lanes::Passing& window)
    : window_(window) {
  lanes::Clockwork clock(roads, setting);
  const double far_m = fastest_mps * static_cast<double>(window.to.unix_s - window.from.unix_s);
  const auto is_far = [&](StretchId s) {
    return distance_m(roads.shape_of(s.piece()).front(), wish.home) > far_m;
  };
  const auto sort_in = [&](Shut shut, Wall wall) {
    if (shut == Shut::always) shut_.push_back(wall);
    if (shut == Shut::at_times) mixed_.push_back(wall);
  };
  for (std::uint32_t row = 0; row < roads.timed_rules.size(); ++row) {
    const road::TimedRule& rule = roads.timed_rules[row];
    if (rule.about == road::Timed::limit || is_far(rule.stretch)) continue;
    const auto open = [&](const lanes::Passing& when) {
      return clock.open(rule, when).in_force == Tri::yes;
    };
    sort_in(shut_in(window, setting, open), {BreachOf::street, row});
  }
  for (std::uint32_t row = 0; row < roads.turn_rules.size(); ++row) {
    const road::TurnRule& rule = roads.turn_rules[row];
    if (roads.text(rule.condition).empty() || is_far(roads.path_of(rule).front())) continue;
    const auto free = [&](const lanes::Passing& when) {
      return clock.binds(rule, when).in_force == Tri::no;
    };
    sort_in(shut_in(window, setting, free), {BreachOf::turn, row});
  }
}

void ClockWalls::apply(const road::Roads& roads, reach::Costs& costs) const {
  for (const Wall& wall : shut_)
    if (wall.of == BreachOf::street) costs.shut(roads.timed_rules[wall.rule].stretch);
  const auto is_turn = [](const Wall& wall) { return wall.of == BreachOf::turn; };
  if (std::ranges::none_of(shut_, is_turn)) return;
  TurnBans bans(roads, costs);
  for (const Wall& wall : shut_)
    if (is_turn(wall)) shut_turns(roads, roads.turn_rules[wall.rule], bans);
}

void ClockWalls::shut(const Wall& wall) {
  if (std::ranges::find(shut_, wall) == shut_.end()) shut_.push_back(wall);
}

void ClockWalls::learn(const std::vector<lanes::Breach>& breaches) {
  if (++rounds_ >= most_rounds) return shut_all();
  for (const lanes::Breach& breach : breaches) shut({breach.of, breach.rule});
}

void ClockWalls::shut_all() {
  for (const Wall& wall : mixed_) shut(wall);
}

ClockWalls ClockWalls::with_only(std::vector<Wall> walls) const {
  ClockWalls other = *this;
  other.shut_ = std::move(walls);
  return other;
}

}  // namespace loopwright::find
