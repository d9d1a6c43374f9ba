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

}  // namespace

ClockWalls::ClockWalls(const road::Roads& roads, const wish::Wish& wish,
                       const hours::Setting& setting) {
  lanes::Clockwork clock(roads, setting);
  const lanes::Passing window = window_of(wish, setting);
  const double far_m = fastest_mps * static_cast<double>(window.to.unix_s - window.from.unix_s);
  const auto is_far = [&](StretchId s) {
    return distance_m(roads.shape_of(s.piece()).front(), wish.home) > far_m;
  };
  const auto sort_in = [](Shut shut, std::uint32_t row, auto& always, auto& at_times) {
    if (shut == Shut::always) always.push_back(row);
    if (shut == Shut::at_times) at_times.push_back(row);
  };
  for (std::uint32_t row = 0; row < roads.timed_rules.size(); ++row) {
    const road::TimedRule& rule = roads.timed_rules[row];
    if (rule.about == road::Timed::limit || is_far(rule.stretch)) continue;
    const auto open = [&](const lanes::Passing& when) {
      return clock.open(rule, when).in_force == Tri::yes;
    };
    sort_in(shut_in(window, setting, open), row, shut_streets_, mixed_streets_);
  }
  for (std::uint32_t row = 0; row < roads.turn_rules.size(); ++row) {
    const road::TurnRule& rule = roads.turn_rules[row];
    if (roads.text(rule.condition).empty() || is_far(roads.path_of(rule).front())) continue;
    const auto free = [&](const lanes::Passing& when) {
      return clock.binds(rule, when).in_force == Tri::no;
    };
    sort_in(shut_in(window, setting, free), row, shut_turns_, mixed_turns_);
  }
}

void ClockWalls::apply(const road::Roads& roads, reach::Costs& costs) const {
  for (const std::uint32_t row : shut_streets_)
    costs.stretch_ms[roads.timed_rules[row].stretch.index()] = -1;
  if (shut_turns_.empty()) return;
  TurnBans bans(roads, costs);
  for (const std::uint32_t row : shut_turns_) {
    const road::TurnRule& rule = roads.turn_rules[row];
    const auto path = roads.path_of(rule);
    if (rule.only == 0)
      bans.shut(path[path.size() - 2], path.back());
    else if (path.size() == 2)
      bans.shut_all_but(path[0], path[1]);
    else
      bans.shut(path[0], path[1]);
  }
}

void ClockWalls::learn(const std::vector<lanes::Breach>& breaches) {
  if (++rounds_ >= most_rounds) return shut_all();
  for (const lanes::Breach& breach : breaches)
    (breach.of == lanes::BreachOf::street ? shut_streets_ : shut_turns_).push_back(breach.rule);
}

void ClockWalls::shut_all() {
  shut_streets_.insert(shut_streets_.end(), mixed_streets_.begin(), mixed_streets_.end());
  shut_turns_.insert(shut_turns_.end(), mixed_turns_.begin(), mixed_turns_.end());
}

std::string ClockWalls::words_of(const road::Roads& roads, PieceId piece) const {
  for (const std::uint32_t row : shut_streets_) {
    const road::TimedRule& rule = roads.timed_rules[row];
    if (rule.stretch.piece() == piece)
      return lanes::street_words(roads, rule.stretch) + " is " + lanes::words_of(roads, rule);
  }
  return "";
}

std::string ClockWalls::words(const road::Roads& roads) const {
  constexpr std::size_t most = 3;
  std::vector<std::string> said;
  for (const std::uint32_t row : shut_streets_) {
    std::string text = words_of(roads, roads.timed_rules[row].stretch.piece());
    if (std::ranges::find(said, text) == said.end() && said.size() < most)
      said.push_back(std::move(text));
  }
  std::string all;
  for (const std::string& text : said) all += (all.empty() ? "" : "; ") + text;
  return all;
}

}  // namespace loopwright::find
