// 1. Without mapped hours only the flags speak: bays for some, or for money, need a look at the plate.
// 2. With hours the stay is widened to whole minutes on the clock of the area. The answer may change
//    within it; then some minute of it is forbidden, and so is the stay.
#include "loopwright/lanes/stopping.hpp"

#include <cassert>

#include "loopwright/base/printable.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/lanes/passage.hpp"

namespace loopwright::lanes {
namespace {

namespace flag = road::pull_up_flag;
using hours::Answer;
using hours::Reason;
using hours::Tri;

/// What the flags alone let one say.
StopJudgement by_flags(const road::PullUp& place) {
  if ((place.flags & flag::residents) != 0)
    return {MayStop::check, "bays for some: read the plate"};
  if ((place.flags & flag::fee) != 0) return {MayStop::check, "a ticket or disc is asked for"};
  return {MayStop::usable, "no ban mapped: check lines, signs and drives"};
}

/// "no parking" when only that is forbidden; a bus lane along the kerb forbids to stop in it.
std::string_view forbidden_words(const road::Roads& roads, const road::PullUp& place) {
  const auto bans = roads.kerb_bans_of(place.stretch);
  const bool only_parking = (place.flags & (flag::lane | flag::lay_by)) == 0 && !bans.empty() &&
                            bans.front().no_stopping == 0;
  return only_parking ? "no parking " : "no stopping ";
}

StopJudgement by_hours(const hours::Timetable& hours, const Passing& stay,
                       const hours::Setting& setting) {
  const Answer through = hours.through(stay.from, stay.to, setting);
  const std::string why =
      hours.words() + "; you stop " + write_clock(stay.from) + " to " + write_clock(stay.to);
  if (through.in_force == Tri::no) return {MayStop::usable, why};
  if (through.in_force == Tri::yes || through.reason == Reason::changes)
    return {MayStop::forbidden, why};
  const std::string reason = reason_words(through.reason);
  return {MayStop::check, reason.empty() ? why : why + " (" + reason + ")"};
}

}  // namespace

std::string_view name(MayStop verdict) {
  switch (verdict) {
    case MayStop::usable:
      return "usable";
    case MayStop::forbidden:
      return "forbidden";
    case MayStop::check:
      break;
  }
  return "check";
}

StopJudgement may_stop(const road::Roads& roads, const road::PullUp& place, const Stay& stay,
                       const hours::Setting& setting) {
  assert(stay.from.unix_s <= stay.to.unix_s);
  const StopJudgement unless_hours = by_flags(place);
  const std::string_view text = roads.text(place.hours);
  if (text.empty()) return unless_hours;
  const hours::Timetable hours(text);
  const Passing when = whole_minutes({setting.on_clock(stay.from), setting.on_clock(stay.to)});
  StopJudgement judged = by_hours(hours, when, setting);
  judged.why.insert(0, forbidden_words(roads, place));
  if (!hours.readable() && judged.verdict == MayStop::check)
    judged.why = "hours can't be read: " + printable(text);
  const bool flagged = judged.verdict == MayStop::usable && unless_hours.verdict != MayStop::usable;
  return flagged ? unless_hours : judged;
}

}  // namespace loopwright::lanes
