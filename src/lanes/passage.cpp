// 1. Times of a file are kept to a thousandth of a second; the interval is widened to whole minutes
//    on the clock of the area, since plates and clocks know no seconds.
// 2. A rule's text is read when it is first asked. Of the values that may hold in the interval, all
//    "yes" is open, none is shut, some is unknown.
#include "loopwright/lanes/passage.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::lanes {
namespace {

using hours::Answer;
using hours::Reason;
using hours::Tri;

constexpr std::int64_t wait_at_line_s = 60;  // ours: most of a signal's red

/// A loop file keeps seconds to a thousandth; the same loop must be judged alike before and after.
double as_written(double seconds) {
  return std::round(seconds * 1e3) / 1e3;
}

double high_behind(const wish::Loop& loop, std::size_t row) {
  return row + 1 < loop.stretches.size() ? loop.stretches[row + 1].arrive_s.high
                                         : loop.seconds.high + loop.stop_seconds;
}

Passing between(const wish::Loop& loop, double low_s, double high_s,
                const hours::Setting& setting) {
  const auto at = [&](double seconds) {
    return setting.on_clock(loop.start.plus_seconds(static_cast<std::int64_t>(seconds)));
  };
  // A file's times may run backwards; that is for the proof to say.
  const double high = std::max(low_s, high_s);
  return whole_minutes({at(std::floor(as_written(low_s))), at(std::ceil(as_written(high)))});
}

Answer answer_of(const hours::Conditional& conditional, const hours::Possible& possible) {
  bool yes = false, no = false;
  for (std::size_t bit = 0; bit <= conditional.rows().size(); ++bit)
    if (possible.has(bit)) (conditional.value(bit) == "yes" ? yes : no) = true;
  if (yes && no) return {Tri::unknown, possible.reason, {}};
  return {yes ? Tri::yes : Tri::no, Reason::stated, {}};
}

}  // namespace

Passing whole_minutes(const Passing& passing) {
  const auto second = [](const Instant& at) { return ((at.unix_s + at.offset_s) % 60 + 60) % 60; };
  const std::int64_t rest = second(passing.to);
  return {passing.from.plus_seconds(-second(passing.from)),
          passing.to.plus_seconds(rest == 0 ? 0 : 60 - rest)};
}

Passing passing_of(const wish::Loop& loop, const Rows& rows, const hours::Setting& setting) {
  return between(loop, loop.stretches[rows.first].arrive_s.low, high_behind(loop, rows.last),
                 setting);
}

Passing turning_into(const wish::Loop& loop, std::size_t row, const hours::Setting& setting) {
  const wish::Range& arrive = loop.stretches[row].arrive_s;
  // Who has just set off hasn't waited at that line before.
  const double low_s = std::max(arrive.low - static_cast<double>(wait_at_line_s), 0.0);
  return between(loop, low_s, arrive.high, setting);
}

std::string when_passing(const Passing& passing) {
  const std::string from = write_clock(passing.from);
  const std::string to = write_clock(passing.to);
  return from == to ? "; you pass at " + from : "; you pass " + from + " to " + to;
}

std::string reason_words(Reason reason) {
  if (reason == Reason::changes) return "";  // the hours and the interval tell it
  const std::string why(hours::words(reason));
  return reason == Reason::no_terms ? why + ": give --terms" : why;
}

const hours::Conditional& Clockwork::conditional(const road::TimedRule& rule) {
  const std::uint64_t key = (std::uint64_t{rule.base.value} << 32U) | rule.text.value;
  const auto found = conditionals_.find(key);
  if (found != conditionals_.end()) return found->second;
  return conditionals_
      .emplace(key, hours::read_conditional(roads_.text(rule.base), roads_.text(rule.text)))
      .first->second;
}

Answer Clockwork::open(const road::TimedRule& rule, const Passing& when) {
  const hours::Conditional& asked = conditional(rule);
  return answer_of(asked, asked.through(when.from, when.to, setting_));
}

Answer Clockwork::binds(const road::TurnRule& rule, const Passing& when) {
  const std::string_view text = roads_.text(rule.condition);
  if (text.empty()) return {Tri::yes, Reason::stated, {}};
  const auto [found, made] = timetables_.try_emplace(rule.condition.value, text);
  return found->second.through(when.from, when.to, setting_);
}

std::optional<Instant> Clockwork::next_change(const road::TimedRule& rule, const Instant& at) {
  return conditional(rule).next_change(at, setting_);
}

}  // namespace loopwright::lanes
