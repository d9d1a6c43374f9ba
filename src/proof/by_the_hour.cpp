// Method:
// 1. A stretch is on the drive from its low arrival to the high arrival at the one behind it (the end
//    of the drive for the last), in whole minutes, widened. All through that time each of its rules
//    about access must let the car through: every value that may hold is "yes".
// 2. A turn restriction with hours is followed by its own path, as one without is (rules.cpp). When
//    the drive does what it forbids, it must not bind from a minute before the low arrival behind its
//    first turn (the wait at the line; not before the start) to the high arrival behind the turn that breaks it.
// 3. Whatever can't be told counts against the drive.
// The times themselves are claims that times.cpp checks.
#include <algorithm>
#include <cmath>

#include "loopwright/hours/timetable.hpp"
#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

using hours::Reason;
using hours::Tri;
using road::TurnRule;

constexpr double minute_s = 60;

Interval widened(const Drive& drive, double low_s, double high_s) {
  const auto moment = [&](double seconds) {
    return drive.setting.on_clock(drive.loop.start.plus_seconds(std::llround(seconds)));
  };
  const Instant from = moment(std::floor(low_s + 0.0005));
  const Instant to = moment(std::ceil(std::max(low_s, high_s) - 0.0005));
  const int past = from.civil().second, beyond = to.civil().second;
  return {from.plus_seconds(-past), to.plus_seconds(beyond == 0 ? 0 : 60 - beyond)};
}

std::string clock_words(const Interval& when) {
  return write_clock(when.from) + " to " + write_clock(when.to);
}

/// " (no school term dates are given …)" when it can't be told; empty otherwise.
std::string doubt(Reason reason) {
  if (reason == Reason::stated || reason == Reason::holiday || reason == Reason::changes) return "";
  const std::string give = reason == Reason::no_terms ? ": give --terms" : "";
  return " (" + std::string(hours::words(reason)) + give + ")";
}

/// The rule lets the car through at every moment, whichever clause holds.
bool lets_through(const hours::Conditional& rule, const hours::Possible& possible) {
  for (std::size_t bit = 0; bit <= rule.rows().size(); ++bit)
    if (possible.has(bit) && rule.value(bit) != "yes") return false;
  return true;
}

bool street_holds(const Drive& drive, std::size_t i, Claims& claims) {
  const Interval when = time_on(drive, i);
  for (const road::TimedRule& row : drive.roads.timed_rules_of(drive.stretches[i])) {
    if (row.about == road::Timed::limit) continue;
    const hours::Conditional rule =
        hours::read_conditional(drive.roads.text(row.base), drive.roads.text(row.text));
    const hours::Possible possible = rule.through(when.from, when.to, drive.setting);
    if (!claims.hold(lets_through(rule, possible), [&] {
          return at_stretch(drive, i) + ": it is shut, or may be, by " +
                 std::string(drive.roads.text(row.source)) + "; the drive is there " +
                 clock_words(when) + doubt(possible.reason);
        }))
      return false;
  }
  return true;
}

/// Rows of the drive that go along the rule's path, from row i on.
std::size_t rows_along(const Drive& drive, const TurnRule& rule, std::size_t i) {
  const auto path = drive.roads.path_of(rule);
  const auto rows = std::span(drive.stretches).subspan(i);
  return static_cast<std::size_t>(std::ranges::mismatch(path, rows).in1 - path.begin());
}

/// The row by which the drive does what the rule forbids; empty when it doesn't.
std::optional<std::size_t> broken_by(const Drive& drive, const TurnRule& rule, std::size_t i) {
  const std::size_t along = rows_along(drive, rule, i);
  if (rule.only == 0) {
    return along == rule.path_count ? std::optional(i + along - 1) : std::nullopt;
  }
  const bool bound = along >= std::min<std::size_t>(2, rule.path_count - 1);
  const bool leaves = along < rule.path_count && i + along < drive.stretches.size();
  return bound && leaves ? std::optional(i + along) : std::nullopt;
}

bool turn_holds(const Drive& drive, std::uint32_t row, std::size_t i, Claims& claims) {
  const TurnRule& rule = drive.roads.turn_rules[row];
  const std::string_view condition = drive.roads.text(rule.condition);
  if (condition.empty()) return true;
  const auto at = broken_by(drive, rule, i);
  if (!at) return true;
  const auto& rows = drive.loop.stretches;
  const Interval when =
      widened(drive, std::max(rows[i + 1].arrive_s.low - minute_s, 0.0), rows[*at].arrive_s.high);
  const hours::Answer binds =
      hours::Timetable(condition).through(when.from, when.to, drive.setting);
  return claims.hold(binds.in_force == Tri::no, [&] {
    return at_stretch(drive, *at) + ": relation " + std::to_string(rule.relation) + " (" +
           std::string(drive.roads.text(rule.text)) + ") forbids it, or may; the drive is there " +
           clock_words(when) + doubt(binds.reason);
  });
}

}  // namespace

double left_s(const Drive& drive, std::size_t i) {
  const auto& rows = drive.loop.stretches;
  return i + 1 < rows.size() ? rows[i + 1].arrive_s.high
                             : drive.loop.seconds.high + drive.loop.stop_seconds;
}

Interval time_on(const Drive& drive, std::size_t i) {
  return widened(drive, drive.loop.stretches[i].arrive_s.low, left_s(drive, i));
}

bool hours_hold(const Drive& drive, const Bans& bans, Claims& claims) {
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    if (!street_holds(drive, i, claims)) return false;
    for (const auto& [first, row] : bans.from(drive.stretches[i]))
      if (!turn_holds(drive, row, i, claims)) return false;
  }
  return true;
}

}  // namespace loopwright::proof
