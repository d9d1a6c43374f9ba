// Method:
//   1. Of each thing with hours all passes come together (room lanes lists and judges them).
//   2. A thing is told with its verdict, or that of each pass when they differ; then its hours, when
//      it is passed, what is close to a change, and what to read on its sign.
#include "command/lanes_drive.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <ostream>

#include "command/folded.hpp"
#include "command/lanes_words.hpp"
#include "command/print.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/lanes/door_kerb.hpp"

namespace loopwright::command {
namespace {

using lanes::May;
using lanes::Passing;
using lanes::Thing;
using lanes::ThingVerdict;
using lanes::TimedThing;

constexpr std::int64_t minute_s = 60;
constexpr std::int64_t close_s =
    10 * minute_s;  // ours: as much as lights and traffic shift a drive

std::string verdict_at(const TimedThing& thing, const Passing& when, const TimedDrive& drive) {
  return lanes::verdict_words(thing, lanes::verdict_on(thing, when, drive.setting));
}

/// "comes into force", of a street "shuts", of a limit "20 mph": what happens at a change.
std::string becomes(const TimedThing& thing, const ThingVerdict& then) {
  if (thing.thing == Thing::limit) return "the limit is " + then.limit;
  if (thing.thing == Thing::street) return "it shuts";
  return thing.thing == Thing::turn ? "the turn is forbidden" : "it comes into force";
}

std::string ends(const TimedThing& thing, const ThingVerdict& before) {
  if (thing.thing == Thing::limit) return "the limit is " + before.limit;
  if (thing.thing == Thing::street) return "it is shut";
  return thing.thing == Thing::turn ? "the turn is forbidden" : "it is in force";
}

/// What to mind of changes, by the moment of each: several passes are told of one change once.
using Minded = std::map<std::int64_t, std::string>;

/// "it comes into force at 16:00, four minutes after you pass"; of the last pass before it.
void mind_after(Minded& minded, const TimedThing& thing, const Passing& when,
                const TimedDrive& drive) {
  const auto change = lanes::next_change(thing, when.to, drive.setting);
  if (!change || change->unix_s - when.to.unix_s > close_s) return;
  const ThingVerdict then = lanes::verdict_on(thing, {*change, *change}, drive.setting);
  if (then.may == May::yes && thing.thing != Thing::limit) return;
  minded[change->unix_s] =
      becomes(thing, then) + (thing.thing == Thing::limit ? " from " : " at ") +
      write_clock(*change) + ", " + minutes_words((change->unix_s - when.to.unix_s) / minute_s) +
      " after you pass";
}

/// The last change up to the moment one begins to pass, within the minutes that are close.
std::optional<Instant> change_before(const TimedThing& thing, const Passing& when,
                                     const TimedDrive& drive) {
  std::optional<Instant> last;
  auto change =
      lanes::next_change(thing, when.from.plus_seconds(-close_s - minute_s), drive.setting);
  while (change && change->unix_s <= when.from.unix_s) {
    last = change;
    change = lanes::next_change(thing, *change, drive.setting);
  }
  return last;
}

/// "it is in force until 15:00, two minutes before you pass"; of the first pass behind it.
void mind_before(Minded& minded, const TimedThing& thing, const Passing& when,
                 const TimedDrive& drive) {
  const auto change = change_before(thing, when, drive);
  if (!change) return;
  const Instant minute_before = change->plus_seconds(-minute_s);
  const ThingVerdict before =
      lanes::verdict_on(thing, {minute_before, minute_before}, drive.setting);
  if (before.may == May::yes && thing.thing != Thing::limit) return;
  const std::int64_t minutes = (when.from.unix_s - change->unix_s) / minute_s;
  minded.emplace(change->unix_s,
                 ends(thing, before) + " until " + write_clock(drive.setting.on_clock(*change)) +
                     ", " + (minutes == 0 ? "just" : minutes_words(minutes)) + " before you pass");
}

/// Why a verdict is what it is, when the hours alone don't tell.
std::string because(const TimedThing& thing, const Passing& when, const TimedDrive& drive) {
  const ThingVerdict verdict = lanes::verdict_on(thing, when, drive.setting);
  if (!verdict.because.empty()) return verdict.because;
  const auto change = lanes::next_change(thing, when.from, drive.setting);
  if (verdict.may == May::yes || !change || change->unix_s > when.to.unix_s) return {};
  return "it changes at " + write_clock(*change) + ", while you pass";
}

void print_warnings(std::ostream& out, const Met& met, const TimedDrive& drive) {
  std::vector<std::string> reasons;
  Minded after, before;
  for (const Passing& when : met.passes) {
    const std::string reason = because(met.thing, when, drive);
    if (!reason.empty() && std::ranges::find(reasons, reason) == reasons.end())
      reasons.push_back(reason);
    if (lanes::verdict_on(met.thing, when, drive.setting).may != May::yes) continue;
    mind_after(after, met.thing, when, drive);
    mind_before(before, met.thing, when, drive);
  }
  for (const std::string& reason : reasons) print_folded(out, set_in, "because " + reason);
  for (const Minded& minded : {before, after})
    for (const auto& [change, text] : minded) print_folded(out, set_in, "mind: " + text);
}

void print_passes(std::ostream& out, const Met& met, const TimedDrive& drive, bool alike) {
  if (met.passes.size() == 1) {
    print_folded(out, set_in, "you pass: " + passing_words(met.passes.front()));
    return;
  }
  std::vector<std::string> times;
  for (const Passing& when : met.passes) {
    times.push_back(passing_words(when));
    if (!alike) times.back() += " (" + verdict_at(met.thing, when, drive) + ")";
  }
  print_folded(out, set_in,
               "passes: " + std::to_string(met.passes.size()) + ", at " + listed(times));
}

void print_one(std::ostream& out, const Met& met, const TimedDrive& drive) {
  const std::string verdict = verdict_at(met.thing, met.passes.front(), drive);
  const bool alike = std::ranges::all_of(met.passes, [&](const Passing& when) {
    return verdict_at(met.thing, when, drive) == verdict;
  });
  print_folded(out, 2,
               thing_head(met.thing) + ": " + (alike ? verdict : "not the same at each pass"));
  print_folded(out, set_in, hours_line(met.thing));
  print_passes(out, met, drive, alike);
  print_warnings(out, met, drive);
  print_folded(out, set_in, next_change_line(met.thing, met.passes.front().from, drive.setting));
  print_folded(out, set_in, "read there: " + std::string(lanes::sign_words(met.thing.thing)));
  print_known(out, met.thing, object(met.thing.source));
}

}  // namespace

namespace {

/// Two passes told alike whose times overlap are one to a driver: the next piece of the same lane.
/// The card joins them in the same way.
void add_pass(Met& met, const Passing& when, const TimedDrive& drive) {
  Passing& last = met.passes.back();
  const bool apart = when.from.unix_s > last.to.unix_s || when.from.unix_s < last.from.unix_s;
  const bool alike = lanes::verdict_on(met.thing, when, drive.setting) ==
                     lanes::verdict_on(met.thing, last, drive.setting);
  if (apart || !alike) {
    met.passes.push_back(when);
  } else if (when.to.unix_s > last.to.unix_s) {
    last.to = when.to;
  }
}

}  // namespace

std::vector<Met> met_on(const TimedDrive& drive) {
  std::vector<Met> all;
  for (TimedThing& thing : lanes::things_on(drive)) {
    const Passing when = lanes::passing_of(thing, drive.loop, drive.setting);
    const auto known = std::ranges::find_if(
        all, [&](const Met& met) { return lanes::told_of(met.thing) == lanes::told_of(thing); });
    if (known == all.end()) {
      all.push_back({std::move(thing), {when}});
    } else {
      add_pass(*known, when, drive);
    }
  }
  return all;
}

void print_streets(std::ostream& out, const TimedDrive& drive) {
  std::vector<std::string> streets;
  for (const wish::LoopStretch& row : drive.loop.stretches) {
    const std::string& street = row.street.empty() ? "an unnamed road" : row.street;
    if (streets.empty() || streets.back() != street) streets.push_back(street);
  }
  print_folded(out, 2, "by " + listed(streets));
}

void print_met(std::ostream& out, const TimedDrive& drive) {
  const std::vector<Met> all = met_on(drive);
  if (all.empty()) print_folded(out, 2, "nothing on the way has hours, as far as it is mapped");
  for (const Met& met : all) print_one(out, met, drive);
}

void print_door_kerbs(std::ostream& out, const TimedDrive& drive) {
  for (const lanes::DoorKerb& kerb : lanes::door_kerbs(drive)) {
    const bool end = kerb.which == lanes::DoorEnd::end;
    print_folded(out, 2, kerb.street + ", the kerb where you " + (end ? "end" : "begin") + ":");
    print_folded(out, set_in, lanes::kerb_words(kerb));
    print_folded(out, set_in,
                 "on the map: " + object(kerb.source) + "; map text: " + kerb.map_text);
  }
}

}  // namespace loopwright::command
