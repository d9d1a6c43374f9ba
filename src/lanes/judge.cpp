// 1. Hours missing or unreadable: check the plate.
// 2. What the hours say all through the interval; unknown means the plate as well, whatever the reason.
// 3. The sentence: what the hours say as the interval begins and until when, or what they hang on; a
//    bank holiday that made the difference by name; then when we pass.
#include <cassert>

#include "loopwright/base/printable.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/lanes/lanes.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::lanes {
namespace {

using hours::Answer;
using hours::Reason;
using hours::Tri;
using wish::Verdict;

/// "16:00", "Monday 07:00" within a week, else "2026-12-25 07:00".
std::string time_seen_from(const CivilTime& now, const Instant& then) {
  const Date day = then.civil().date;
  if (day == now.date) return write_clock(then);
  const bool this_week = days_since_epoch(day) - days_since_epoch(now.date) < 7;
  return (this_week ? std::string(hours::name(weekday_of(day))) : road::day_text(day)) + " " +
         write_clock(then);
}

/// What the hours say as the interval begins. Rules: they say yes or no.
std::string state_in_words(Tri in_force, const Instant& begin,
                           const std::optional<Instant>& change) {
  const bool yes = in_force == Tri::yes;
  if (!change) return yes ? "in force at any time" : "never in force";
  return (yes ? "in force until " : "in force from ") + time_seen_from(begin.civil(), *change);
}

/// " (St Andrew's Day)" when that decides.
std::string holiday_words(const Answer& answer, const Instant& at, const hours::Setting& setting) {
  if (answer.reason != Reason::holiday) return "";
  const std::string_view name = setting.bank_holiday_name(at.civil().date);
  return name.empty() ? "" : " (" + std::string(name) + ")";
}

}  // namespace

Judgement judge(std::string_view hours_text, const Passing& when, const hours::Setting& setting) {
  assert(when.from.unix_s <= when.to.unix_s);
  if (hours_text.empty()) return {Verdict::check_the_plate, "hours not mapped"};
  const hours::Timetable hours(hours_text);
  const Passing passing = whole_minutes({setting.on_clock(when.from), setting.on_clock(when.to)});
  const Answer through = hours.through(passing.from, passing.to, setting);
  if (!hours.readable() && through.in_force == Tri::unknown) {
    return {Verdict::check_the_plate, "hours can't be read: " + printable(hours_text)};
  }
  const Answer begin = hours.at(passing.from, setting);
  const auto change = hours.next_change(passing.from, setting);
  std::string why = begin.in_force == Tri::unknown
                        ? std::string()
                        : state_in_words(begin.in_force, passing.from, change) +
                              holiday_words(begin, passing.from, setting);
  const std::string reason = reason_words(through.reason);
  if (through.in_force == Tri::unknown && !reason.empty()) {
    why = why.empty() ? reason : why + ", but " + reason;
  }
  why += when_passing(passing);
  if (through.in_force == Tri::unknown) return {Verdict::check_the_plate, why, change};
  return {through.in_force == Tri::no ? Verdict::usable : Verdict::in_force, why, change};
}

}  // namespace loopwright::lanes
