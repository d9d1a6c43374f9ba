// Method: the same drive is judged as if it had begun up to half an hour earlier or later, in whole
// minutes, the least shift first and earlier before later. A shift is better when more lanes may be
// used, none that could be used is lost, and no street or turn is shut then; all this also when one
// sets off a few minutes before or after it, since one drive in ten is quicker, one slower.
// Why the same drive: its times of the day are those of the learner's pace, which half an hour
// doesn't change here.
#include <algorithm>
#include <ostream>

#include "command/lanes_drive.hpp"
#include "command/lanes_words.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/lanes/lanes.hpp"

namespace loopwright::command {
namespace {

constexpr int most_minutes = 30;
constexpr int margin_minutes = 3;  // ours: an advice that a closed door upsets is none

using Passes = std::vector<wish::BusLanePass>;

bool usable(const wish::BusLanePass& lane) {
  return lane.verdict == wish::Verdict::usable;
}

/// A drive begun some minutes later, or earlier.
struct Shifted {
  int minutes = 0;
  Passes passes;
  [[nodiscard]] std::ptrdiff_t usable_lanes() const {
    return std::ranges::count_if(passes, usable);
  }
};

Shifted shifted(const TimedDrive& drive, int minutes, wish::Loop& loop) {
  loop.start = drive.loop.start.plus_seconds(std::int64_t{60} * minutes);
  return {minutes, lanes::bus_lanes_on(drive.roads, loop, drive.setting)};
}

bool none_worse(const Passes& now, const Passes& then) {
  for (std::size_t k = 0; k < now.size(); ++k)
    if (usable(now[k]) && !usable(then[k])) return false;
  return true;
}

/// What may be used then may be used a little earlier and later too, and nothing else is shut.
bool holds_with_margin(const TimedDrive& drive, const Shifted& then) {
  wish::Loop loop = drive.loop;
  for (const int off : {-margin_minutes, 0, margin_minutes}) {
    const Shifted about = shifted(drive, then.minutes + off, loop);
    if (!none_worse(then.passes, about.passes)) return false;
    if (!lanes::breaches_on(drive.roads, loop, drive.setting).empty()) return false;
  }
  return true;
}

/// Better starts, each with more usable lanes than the one before it.
std::vector<Shifted> better_starts(const TimedDrive& drive, const Shifted& now) {
  std::vector<Shifted> better;
  wish::Loop loop = drive.loop;
  std::ptrdiff_t best = now.usable_lanes();
  for (int step = 1; step <= most_minutes; ++step) {
    for (const int minutes : {-step, step}) {
      Shifted then = shifted(drive, minutes, loop);
      if (then.usable_lanes() <= best || !none_worse(now.passes, then.passes)) continue;
      if (!holds_with_margin(drive, then)) continue;
      best = then.usable_lanes();
      better.push_back(std::move(then));
    }
  }
  return better;
}

std::string lanes_gained(const wish::Loop& loop, const Shifted& then) {
  const auto all = static_cast<std::ptrdiff_t>(then.passes.size());
  if (then.usable_lanes() == all) {
    if (all == 1) return "the lane may be used";
    return all == 2 ? "both lanes may be used"
                    : "all " + number_word(static_cast<int>(all)) + " lanes may be used";
  }
  std::string text;
  for (const wish::BusLanePass& lane : then.passes)
    if (usable(lane)) text += (text.empty() ? "" : ", ") + street_of(loop, lane.first);
  return "these may be used: " + text;
}

}  // namespace

void print_advice(std::ostream& out, const TimedDrive& drive) {
  wish::Loop loop = drive.loop;
  const Shifted now = shifted(drive, 0, loop);
  if (now.usable_lanes() == static_cast<std::ptrdiff_t>(now.passes.size())) return;
  const auto better = better_starts(drive, now);
  if (better.empty()) {
    out << "  no start up to half an hour earlier or later is better\n";
    return;
  }
  for (const Shifted& then : better) {
    const int minutes = std::abs(then.minutes);
    const Instant start =
        drive.setting.on_clock(drive.loop.start.plus_seconds(std::int64_t{60} * then.minutes));
    out << "  leave " << number_word(minutes) << (minutes == 1 ? " minute " : " minutes ")
        << (then.minutes < 0 ? "earlier" : "later") << ", at " << write_clock(start) << ", and "
        << lanes_gained(drive.loop, then) << '\n';
  }
}

}  // namespace loopwright::command
