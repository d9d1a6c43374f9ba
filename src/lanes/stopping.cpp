// 1. Without mapped hours only the flags speak: bays for some, or for money, need a look at the plate.
// 2. With hours the stay is widened to whole minutes on the clock of the area. The answer may change
//    within it; then some minute of it is forbidden, and so is the stay.
#include "loopwright/lanes/stopping.hpp"

#include <cassert>

#include "lanes/passing.hpp"
#include "loopwright/hours/hours.hpp"
#include "loopwright/hours/zone.hpp"

namespace loopwright::lanes {
namespace {

namespace flag = road::pull_up_flag;
using hours::Tri;

Instant on_local_clock(const road::Roads& roads, const Instant& at) {
  const std::string& zone = roads.info().zone;
  return zone.empty() ? at : hours::with_offset_of(zone, at.unix_s);
}

/// What the flags alone let one say.
StopJudgement by_flags(const road::PullUp& place) {
  if ((place.flags & flag::residents) != 0)
    return {MayStop::check, "bays for some: read the plate"};
  if ((place.flags & flag::fee) != 0) return {MayStop::check, "a ticket or disc is asked for"};
  return {MayStop::usable, "no ban mapped: check lines, signs and drives"};
}

StopJudgement by_hours(const hours::Hours& hours, const Passing& stay) {
  const std::string why = "no stopping " + hours.words() + "; you stop " + write_clock(stay.from) +
                          " to " + write_clock(stay.to);
  if (stay.from.offset_s != stay.to.offset_s) return {MayStop::check, "the clocks change; " + why};
  const CivilTime begin = stay.from.civil();
  const Tri through = hours.through(begin, stay.to.civil());
  if (through == Tri::no) return {MayStop::usable, why};
  const bool changes = through == Tri::unknown && hours.in_force(begin) != Tri::unknown;
  return {through == Tri::yes || changes ? MayStop::forbidden : MayStop::check, why};
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

StopJudgement may_stop(const road::Roads& roads, const road::PullUp& place, const Stay& stay) {
  assert(stay.from.unix_s <= stay.to.unix_s);
  const StopJudgement unless_hours = by_flags(place);
  const std::string_view text = roads.text(place.hours);
  if (text.empty()) return unless_hours;
  const hours::Hours hours = hours::read_hours(text);
  if (!hours.readable()) return {MayStop::check, "hours can't be read: " + std::string(text)};
  const StopJudgement judged = by_hours(
      hours, whole_minutes(on_local_clock(roads, stay.from), on_local_clock(roads, stay.to)));
  const bool flagged = judged.verdict == MayStop::usable && unless_hours.verdict != MayStop::usable;
  return flagged ? unless_hours : judged;
}

}  // namespace loopwright::lanes
