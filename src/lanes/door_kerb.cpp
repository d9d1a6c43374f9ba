// 1. The near kerb of the first stretch is where a drive begins, that of the last where it ends.
// 2. Its ban is asked for all of the time in which nine drives in ten are there, in whole minutes; the
//    minute that is told is the likely one.
#include "loopwright/lanes/door_kerb.hpp"

#include <algorithm>

#include "loopwright/base/printable.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/lanes/timed_things.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::lanes {
namespace {

using hours::Reason;
using hours::Tri;

/// When it begins: at the start, but for a learner's drive that was cut out of a whole one.
Stay time_of_begin(const TimedDrive& drive) {
  const wish::Range& reached = drive.loop.stretches.front().arrive_s;
  const auto at = [&](double seconds) {
    return wish::clock_after(drive.loop, seconds, drive.setting);
  };
  return {at(std::min(reached.low, reached.likely)), at(std::max(reached.high, reached.likely))};
}

/// The time in which a drive is over, nine times in ten.
Stay time_of_end(const TimedDrive& drive) {
  const wish::Range& seconds = drive.loop.seconds;
  const auto at = [&](double driven_s) {
    return wish::clock_after(drive.loop, driven_s + drive.loop.stop_seconds, drive.setting);
  };
  // A file's times may run backwards; that is for the proof to say.
  return {at(std::min(seconds.low, seconds.likely)), at(std::max(seconds.high, seconds.likely))};
}

/// "it changes at 16:00, about when you are there".
std::string change_words(const hours::Timetable& times, const Passing& when,
                         const hours::Setting& setting) {
  const auto change = times.next_change(when.from, setting);
  if (!change || change->unix_s > when.to.unix_s) return "check the plate";
  return "it changes at " + write_clock(setting.on_clock(*change)) + ", check the plate";
}

void add(std::vector<DoorKerb>& kerbs, const TimedDrive& drive, DoorEnd which) {
  const bool end = which == DoorEnd::end;
  const auto& rows = drive.loop.stretches;
  const StretchId stretch = (end ? rows.back() : rows.front()).stretch;
  const Stay stay = end ? time_of_end(drive) : time_of_begin(drive);
  const Instant likely =
      end ? wish::likely_end(drive.loop, drive.setting)
          : wish::clock_after(drive.loop, rows.front().arrive_s.likely, drive.setting);
  for (const road::KerbBan& ban : drive.roads.kerb_bans_of(stretch)) {
    BanJudgement judged = judge_ban(drive.roads, ban, stay, likely, drive.setting);
    kerbs.push_back({which,
                     stretch,
                     street_name(drive.roads, stretch),
                     likely,
                     judged.verdict,
                     ban.no_stopping != 0,
                     ban_words(drive.roads, ban),
                     std::move(judged.state),
                     std::string(drive.roads.text(ban.source)),
                     {drive.roads.piece(stretch).way, ObjectType::way, {}}});
  }
}

/// What to do about it; empty when nothing is to do.
std::string_view advice(const DoorKerb& kerb) {
  if (kerb.verdict == MayStop::usable) return {};
  if (kerb.seats_change) return "change over elsewhere";
  if (kerb.which == DoorEnd::begin)
    return kerb.no_stopping ? "pick up elsewhere" : "pick up and go, talk elsewhere";
  return kerb.no_stopping ? "let the pupil out elsewhere" : "only set down here, talk elsewhere";
}

}  // namespace

std::string ban_words(const road::Roads& roads, const road::KerbBan& ban) {
  const std::string what = ban.no_stopping != 0 ? "no stopping " : "no parking ";
  const std::string_view text = roads.text(ban.hours);
  const hours::Timetable times(text);
  if (times.readable()) return what + times.words();
  return what + "at hours that can't be read (" + printable(text) + ")";
}

BanJudgement judge_ban(const road::Roads& roads, const road::KerbBan& ban, const Stay& stay,
                       const Instant& likely, const hours::Setting& setting) {
  const hours::Timetable times(roads.text(ban.hours));
  const Passing when = whole_minutes({setting.on_clock(stay.from), setting.on_clock(stay.to)});
  const hours::Answer holds = times.through(when.from, when.to, setting);
  const std::string at = "in force at " + write_clock(setting.on_clock(likely));
  if (holds.in_force == Tri::yes)
    return {MayStop::forbidden, times.never_changes() ? "in force" : at};
  if (holds.in_force == Tri::no) return {MayStop::usable, "not " + at};
  if (holds.reason == Reason::changes) return {MayStop::check, change_words(times, when, setting)};
  const std::string why = times.readable() ? reason_words(holds.reason) : "";
  return {MayStop::check, why.empty() ? "check the plate" : "check the plate (" + why + ")"};
}

std::vector<DoorKerb> door_kerbs(const TimedDrive& drive) {
  std::vector<DoorKerb> kerbs;
  if (drive.loop.stretches.empty()) return kerbs;
  add(kerbs, drive, DoorEnd::begin);
  add(kerbs, drive, DoorEnd::end);
  return kerbs;
}

std::string kerb_words(const DoorKerb& kerb) {
  std::string text = kerb.ban + "; " + kerb.state;
  if (const std::string_view to_do = advice(kerb); !to_do.empty()) text.append(": ").append(to_do);
  return text;
}

}  // namespace loopwright::lanes
