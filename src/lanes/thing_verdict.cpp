// 1. Of lanes, gates, streets and turns the hours at which they keep us out are asked for the whole
//    interval; of a limit which of its values may hold.
// 2. What can't be told is "check the plate" for a lane or gate, and keep out for a street or turn.
#include <algorithm>

#include "loopwright/hours/timetable.hpp"
#include "loopwright/lanes/timed_things.hpp"

namespace loopwright::lanes {
namespace {

using hours::Answer;
using hours::Reason;
using hours::Tri;

bool has_plate(Thing thing) {
  return thing != Thing::street && thing != Thing::turn && thing != Thing::limit;
}

hours::Conditional limit_of(const TimedThing& thing) {
  return hours::read_conditional(thing.base, thing.values);
}

ThingVerdict limit_verdict(const TimedThing& thing, const Passing& when,
                           const hours::Setting& setting) {
  const hours::Conditional limit = limit_of(thing);
  const hours::Possible possible = limit.through(when.from, when.to, setting);
  std::vector<std::string> values;
  for (std::size_t bit = 0; bit <= limit.rows().size(); ++bit) {
    if (!possible.has(bit)) continue;
    std::string value = limit_words(limit.value(bit));
    if (std::ranges::find(values, value) == values.end()) values.push_back(std::move(value));
  }
  ThingVerdict verdict;
  for (const std::string& value : values)
    verdict.limit += (verdict.limit.empty() ? "" : " or ") + value;
  verdict.may = values.size() == 1 ? May::yes : May::check;
  if (values.size() > 1) verdict.because = reason_words(possible.reason);
  return verdict;
}

/// "it is a bank holiday, Boxing Day (substitute day)" when that decides.
std::string holiday_words(const Answer& answer, const Instant& at, const hours::Setting& setting) {
  if (answer.reason != Reason::holiday) return {};
  const std::int64_t today = days_since_epoch(setting.on_clock(at).civil().date);
  const Date day = date_from_days(today + answer.holiday_days);
  const std::string name(setting.bank_holiday_name(day));
  if (name.empty()) return {};
  if (answer.holiday_days == 0) return "it is a bank holiday, " + name;
  return "a bank holiday is near, " + name;
}

ThingVerdict hours_verdict(const TimedThing& thing, const Passing& when,
                           const hours::Setting& setting) {
  const bool plate = has_plate(thing.thing);
  const May unless_sure = plate ? May::check : May::no;
  const hours::Timetable hours(thing.shut);
  const Answer shut = hours.through(when.from, when.to, setting);
  if (shut.in_force == Tri::unknown) return {unless_sure, {}, reason_words(shut.reason)};
  const std::string holiday = holiday_words(shut, when.from, setting);
  if (shut.in_force == Tri::yes) return {May::no, {}, holiday};
  return {plate && !thing.doubt.empty() ? May::check : May::yes, {}, holiday};
}

}  // namespace

ThingVerdict verdict_on(const TimedThing& thing, const Passing& when,
                        const hours::Setting& setting) {
  if (!thing.never.empty()) return {May::no, {}, thing.never};
  if (thing.thing == Thing::limit) return limit_verdict(thing, when, setting);
  if (thing.shut.empty()) return {May::check, {}, {}};
  return hours_verdict(thing, when, setting);
}

std::string verdict_words(Thing thing, const ThingVerdict& verdict) {
  const bool yes = verdict.may == May::yes;
  switch (thing) {
    case Thing::limit:
      return verdict.limit + (yes ? "" : ", check the signs");
    case Thing::street:
      return yes ? "may be driven" : "keep out";
    case Thing::turn:
      return yes ? "may be made" : "keep out, don't turn here";
    default:
      break;
  }
  if (yes) return "usable";
  return verdict.may == May::no ? "in force, keep out" : "check the plate";
}

std::string verdict_words(const TimedThing& thing, const ThingVerdict& verdict) {
  return thing.never.empty() ? verdict_words(thing.thing, verdict) : "keep out";
}

std::optional<Instant> next_change(const TimedThing& thing, const Instant& at,
                                   const hours::Setting& setting) {
  if (!thing.never.empty()) return std::nullopt;
  std::optional<Instant> change;
  if (thing.thing == Thing::limit) {
    change = limit_of(thing).next_change(at, setting);
  } else if (!thing.shut.empty()) {
    change = hours::Timetable(thing.shut).next_change(at, setting);
  }
  if (change) change = setting.on_clock(*change);
  return change;
}

std::string_view no_change_words(const TimedThing& thing, const Instant& at,
                                 const hours::Setting& setting) {
  if (!thing.never.empty()) return "none, it never changes";
  if (thing.thing == Thing::limit) {
    const bool told = verdict_on(thing, {at, at}, setting).may == May::yes;
    if (!told) return "the map can't say";
    return limit_of(thing).never_changes() ? "none, it never changes" : "none to come";
  }
  if (thing.shut.empty()) return "the map can't say";
  const hours::Timetable hours(thing.shut);
  if (hours.at(at, setting).in_force == Tri::unknown) return "the map can't say";
  return hours.never_changes() ? "none, it never changes" : "none to come";
}

}  // namespace loopwright::lanes
