// 1. The route is looked for again on the same roads without their hours.
// 2. When that drive is quicker, what the clock would forbid on it is what was kept out of.
// 3. Until when: the first change after one would be there from which it is settled open.
#include "command/lanes_avoided.hpp"

#include <algorithm>
#include <cmath>
#include <ostream>

#include "command/folded.hpp"
#include "command/lanes_words.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/lanes/timed_things.hpp"

namespace loopwright::command {
namespace {

using lanes::May;
using lanes::Thing;
using lanes::TimedThing;

constexpr int most_changes = 50;  // ours: of a text that changes and never opens

TimedThing thing_of(const road::Roads& roads, const lanes::Breach& breach) {
  return breach.of == lanes::BreachOf::turn
             ? lanes::thing_of_turn(roads, roads.turn_rules[breach.rule])
             : lanes::thing_of_rule(roads, roads.timed_rules[breach.rule]);
}

/// The first moment after `at` from which it may be used.
std::optional<Instant> opens(const TimedThing& thing, const Instant& at,
                             const hours::Setting& setting) {
  auto change = lanes::next_change(thing, at, setting);
  for (int k = 0; change && k < most_changes; ++k) {
    if (lanes::verdict_on(thing, {*change, *change}, setting).may == May::yes) return change;
    change = lanes::next_change(thing, *change, setting);
  }
  return std::nullopt;
}

/// It is settled shut at every minute of the passing.
bool surely_shut(const TimedRoads& timed, const lanes::Breach& breach,
                 const lanes::Passing& passing) {
  lanes::Clockwork clock(timed.roads, timed.setting);
  if (breach.of == lanes::BreachOf::turn)
    return clock.binds(timed.roads.turn_rules[breach.rule], passing).in_force == hours::Tri::yes;
  return clock.open(timed.roads.timed_rules[breach.rule], passing).in_force == hours::Tri::no;
}

std::string kept_from(const TimedRoads& timed, const wish::Loop& quicker,
                      const lanes::Breach& breach) {
  const bool turn = breach.of == lanes::BreachOf::turn;
  const lanes::Passing passing =
      turn ? lanes::turning_into(quicker, breach.at, timed.setting)
           : lanes::passing_of(quicker, {breach.at, breach.at}, timed.setting);
  const std::string street = lanes::street_words(timed.roads, quicker.stretches[breach.at].stretch);
  std::string text = (turn ? "the turn into " + street : street) + ", which ";
  text += surely_shut(timed, breach, passing) ? "is " : "may be ";
  text += turn ? "banned" : "shut";
  const auto until = opens(thing_of(timed.roads, breach), passing.to, timed.setting);
  if (!until) return text + " at any time near";
  const Instant at = timed.setting.on_clock(*until);
  return text + " until " + change_words(at, passing.to.civil().date);
}

road::Roads without_hours(const road::Roads& roads, std::vector<road::TimedRule>& limits) {
  for (const road::TimedRule& rule : roads.timed_rules)
    if (rule.about == road::Timed::limit) limits.push_back(rule);
  road::Roads open = roads;
  open.timed_rules = limits;
  open.turn_rules = {};  // what holds at all hours is in the turns themselves
  return open;
}

}  // namespace

std::optional<wish::Loop> drive_without_hours(const TimedRoads& timed, const wish::Wish& wish) {
  std::vector<road::TimedRule> limits;
  const road::Roads open = without_hours(timed.roads, limits);
  auto found = find::route_through(open, wish, timed.setting);
  if (found.loops.empty()) return std::nullopt;
  return std::move(found.loops.front());
}

std::vector<std::string> shut_on(const TimedRoads& timed, const wish::Loop& quicker) {
  std::vector<std::string> all;
  for (const lanes::Breach& breach : lanes::breaches_on(timed.roads, quicker, timed.setting)) {
    std::string text = kept_from(timed, quicker, breach);
    if (std::ranges::find(all, text) == all.end()) all.push_back(std::move(text));
  }
  return all;
}

void print_avoided(std::ostream& out, const TimedRoads& timed, const wish::Wish& wish,
                   const wish::Loop& drive) {
  if (timed.roads.timed_rules.empty() && timed.roads.turn_rules.empty()) return;
  const auto quicker = drive_without_hours(timed, wish);
  if (!quicker || quicker->seconds.likely >= drive.seconds.likely) return;
  const std::vector<std::string> shut = shut_on(timed, *quicker);
  if (shut.empty()) return;
  constexpr double minute_s = 60;
  const auto minutes = std::llround((drive.seconds.likely - quicker->seconds.likely) / minute_s);
  print_folded(out, 2,
               "kept out of " + listed(shut) + "; that way is " +
                   (minutes == 0 ? "less than a minute" : minutes_words(minutes)) + " shorter");
}

}  // namespace loopwright::command
