// Method: the same drive is judged as if it had begun up to half an hour earlier or later, in whole
// minutes, the least shift first and earlier before later. A shift is better when more of what has
// hours (bus lanes and gates, streets, turns) may be used, and nothing is lost that could be; all
// this also when one sets off a few minutes before or after it, since one drive in ten is quicker,
// one slower. What never changes is told apart: no start helps there.
// Why the same drive: its times of the day are those of the learner's pace, which half an hour
// doesn't change here.
#include <algorithm>
#include <ostream>

#include "command/folded.hpp"
#include "command/lanes_drive.hpp"
#include "command/lanes_words.hpp"
#include "loopwright/base/plain_words.hpp"

namespace loopwright::command {
namespace {

using lanes::May;
using lanes::Thing;
using lanes::TimedThing;

constexpr int most_minutes = 30;
constexpr int margin_minutes = 3;  // ours: an advice that a closed door upsets is none

/// What of each thing is so for a drive begun some minutes later, or earlier.
using Usable = std::vector<bool>;

class Starts {
 public:
  explicit Starts(const TimedDrive& drive) : drive_(drive) {
    for (TimedThing& thing : lanes::things_on(drive))
      if (thing.thing != Thing::limit) things_.push_back(std::move(thing));
  }
  [[nodiscard]] const std::vector<TimedThing>& things() const { return things_; }
  [[nodiscard]] Usable usable(int minutes) const {
    wish::Loop loop = drive_.loop;
    loop.start = drive_.loop.start.plus_seconds(std::int64_t{60} * minutes);
    Usable usable;
    for (const TimedThing& thing : things_) {
      const lanes::Passing when = lanes::passing_of(thing, loop, drive_.setting);
      usable.push_back(lanes::verdict_on(thing, when, drive_.setting).may == May::yes);
    }
    return usable;
  }
  /// Its hours make no difference at any start.
  [[nodiscard]] bool fixed(const TimedThing& thing) const {
    return !lanes::next_change(thing, drive_.loop.start, drive_.setting) || !thing.doubt.empty();
  }

 private:
  const TimedDrive& drive_;
  std::vector<TimedThing> things_;
};

bool none_worse(const Usable& now, const Usable& then) {
  for (std::size_t k = 0; k < now.size(); ++k)
    if (now[k] && !then[k]) return false;
  return true;
}

std::ptrdiff_t count(const Usable& usable) {
  return std::ranges::count(usable, true);
}

struct Better {
  int minutes = 0;
  Usable usable;
};

/// What may be used then may be used a little earlier and later too.
bool holds_with_margin(const Starts& starts, const Better& then) {
  return std::ranges::all_of(std::array{-margin_minutes, margin_minutes}, [&](int off) {
    return none_worse(then.usable, starts.usable(then.minutes + off));
  });
}

/// Better starts, each with more that may be used than the one before it.
std::vector<Better> better_starts(const Starts& starts) {
  const Usable now = starts.usable(0);
  std::vector<Better> better;
  std::ptrdiff_t best = count(now);
  for (int step = 1; step <= most_minutes; ++step) {
    for (const int minutes : {-step, step}) {
      Better then{minutes, starts.usable(minutes)};
      if (count(then.usable) <= best || !none_worse(now, then.usable)) continue;
      if (!holds_with_margin(starts, then)) continue;
      best = count(then.usable);
      better.push_back(std::move(then));
    }
  }
  return better;
}

/// Each once, since one thing may be passed several times.
std::vector<std::string> names(const std::vector<TimedThing>& things, const Usable& which) {
  std::vector<std::string> names;
  for (std::size_t k = 0; k < things.size(); ++k) {
    if (!which[k]) continue;
    std::string name = things[k].street + " (" + std::string(lanes::name(things[k].thing)) + ")";
    if (std::ranges::find(names, name) == names.end()) names.push_back(std::move(name));
  }
  return names;
}

std::string gained(const Starts& starts, const Usable& now, const Better& then) {
  Usable won(now.size());
  for (std::size_t k = 0; k < now.size(); ++k) won[k] = then.usable[k] && !now[k];
  const std::vector<std::string> all = names(starts.things(), won);
  return listed(all) + " may be used";
}

void print_better(std::ostream& out, const TimedDrive& drive, const Better& then,
                  const std::string& what) {
  const Instant start =
      drive.setting.on_clock(drive.loop.start.plus_seconds(std::int64_t{60} * then.minutes));
  print_folded(out, 2,
               "leave " + minutes_words(std::abs(then.minutes)) +
                   (then.minutes < 0 ? " earlier" : " later") + ", at " + write_clock(start) +
                   ", and " + what);
}

/// "hours not mapped", "in force at any time": why no start helps there.
std::string fixed_words(const TimedThing& thing) {
  if (!thing.never.empty()) return thing.never;
  if (!thing.doubt.empty()) return "in doubt on the map";
  if (thing.shut.empty() || thing.thing == Thing::street || thing.thing == Thing::turn)
    return thing.words;
  return "in force " + thing.words;
}

/// Why another time of the day changes nothing: "Station Road (hours not mapped)".
void print_fixed(std::ostream& out, const Starts& starts, const Usable& now) {
  std::vector<std::string> why;
  for (std::size_t k = 0; k < now.size(); ++k) {
    const TimedThing& thing = starts.things()[k];
    if (now[k] || !starts.fixed(thing)) continue;
    std::string text = thing.street + " (" + fixed_words(thing) + ")";
    if (std::ranges::find(why, text) == why.end()) why.push_back(std::move(text));
  }
  if (why.empty()) return;
  print_folded(out, 2, "another time of the day changes nothing for " + listed(why));
}

}  // namespace

void print_advice(std::ostream& out, const TimedDrive& drive) {
  const Starts starts(drive);
  const Usable now = starts.usable(0);
  if (count(now) == static_cast<std::ptrdiff_t>(now.size())) return;
  const std::vector<Better> better = better_starts(starts);
  for (const Better& then : better) print_better(out, drive, then, gained(starts, now, then));
  bool helpless = false;  // something changes, but not within reach
  for (std::size_t k = 0; k < now.size(); ++k)
    helpless = helpless || (!now[k] && !starts.fixed(starts.things()[k]));
  if (better.empty() && helpless) {
    print_folded(out, 2, "no start up to half an hour earlier or later is better");
  }
  print_fixed(out, starts, now);
}

}  // namespace loopwright::command
