// 1. Widen the interval of passing to whole minutes, since plates and clocks know no seconds.
// 2. Hours missing, unreadable or changing within it: check the plate. Else usable or in force.
// 3. The sentence: what the hours say there, then when we pass.
#include "loopwright/lanes/lanes.hpp"

#include <cassert>

#include "lanes/passing.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::lanes {
namespace {

using hours::Tri;
using wish::Verdict;

std::string clock(const CivilTime& time) {
  return write_clock({civil_seconds(time), 0});
}

std::string when_passing(const Passing& passing) {
  const std::string from = write_clock(passing.from);
  const std::string to = write_clock(passing.to);
  return from == to ? "; you pass at " + from : "; you pass " + from + " to " + to;
}

/// "16:00", or "Monday 07:00" when that is on another day.
std::string time_seen_from(const CivilTime& now, const CivilTime& then) {
  if (then.date == now.date) return clock(then);
  return std::string(hours::name(weekday_of(then.date))) + " " + clock(then);
}

/// What the hours say at the beginning of passing.
std::string state_in_words(Tri in_force, const CivilTime& now,
                           const std::optional<CivilTime>& change) {
  if (in_force == Tri::yes) {
    return change ? "in force until " + time_seen_from(now, *change) : "in force at any time";
  }
  return change ? "in force from " + time_seen_from(now, *change) : "never in force";
}

}  // namespace

Passing whole_minutes(const Instant& from, const Instant& to) {
  const auto civil_second = [](const Instant& at) { return (at.unix_s + at.offset_s) % 60; };
  const std::int64_t to_rest = civil_second(to);
  return {from.plus_seconds(-civil_second(from)), to.plus_seconds(to_rest == 0 ? 0 : 60 - to_rest)};
}

Judgement judge(std::string_view hours_text, const Instant& from, const Instant& to) {
  assert(from.unix_s <= to.unix_s);
  if (hours_text.empty()) return {Verdict::check_the_plate, "hours not mapped"};
  const hours::Hours hours = hours::read_hours(hours_text);
  if (!hours.readable()) {
    return {Verdict::check_the_plate, "hours can't be read: " + std::string(hours_text)};
  }
  const Passing passing = whole_minutes(from, to);
  if (passing.from.offset_s != passing.to.offset_s) {
    return {Verdict::check_the_plate, "the clocks change" + when_passing(passing)};
  }
  const CivilTime begin = passing.from.civil();
  const Tri through = hours.through(begin, passing.to.civil());
  const std::string why = state_in_words(hours.in_force(begin), begin, hours.next_change(begin)) +
                          when_passing(passing);
  if (through == Tri::unknown) return {Verdict::check_the_plate, why};
  return {through == Tri::no ? Verdict::usable : Verdict::in_force, why};
}

}  // namespace loopwright::lanes
