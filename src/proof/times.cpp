// Method:
// 1. Arrivals add up the pace of the rows and the delays between them. Delays need to know what
//    controls the turn, so they are read from the area's row of that turn: of the stretch itself or
//    of one of its copies. Whether the turn is allowed was settled without that table.
//    What comes after a planned stop is reached later by it; the loop's seconds are driving alone.
// 2. Limits are those of the day the drive begins.
// 3. Likely driving and stops together, and what is kept for planned stops without a place, fill 95 to
//    100 % of the minutes less the reserve.
#include <cstdlib>

#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/stops.hpp"
#include "proof/checks.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

using pace::Pace;
using pace::Spell;

Spell along(const Drive& drive, const Pace& pace, std::size_t i) {
  return pace.along_part(drive.stretches[i], drive.parts[i].from_m, drive.parts[i].to_m);
}

/// Seconds the file's passes and planned stops take on one row.
double stops_on(const Drive& drive, std::size_t row) {
  double sum = 0;
  for (const wish::Pass& pass : drive.loop.passes)
    if (pass.last == row) sum += pass.stop_s;
  for (const wish::PullUp& stop : drive.loop.pull_ups)
    if (stop.stretch == row) sum += stop.seconds;
  return sum;
}

std::string limit_text(const road::LimitOnDay& limit) {
  const std::string value = limit.value == 0
                                ? "no limit"
                                : std::to_string(limit.value) + " " + std::string(name(limit.unit));
  return value + ", " + std::string(road::name(limit.confidence));
}

bool start_holds(const Drive& drive, Claims& claims) {
  return claims.agree(at_loop(drive) + ", start", write_time(drive.loop.start),
                      write_time(drive.wish.start));
}

/// The end is told to a second, on the clock of the area. Rules: the stops hold.
bool end_holds(const Drive& drive, Claims& claims) {
  if (!drive.loop.end) return true;
  const Instant own = wish::likely_end(drive.loop, drive.setting);
  const bool same = std::abs(own.unix_s - drive.loop.end->unix_s) <= 1 &&
                    own.offset_s == drive.loop.end->offset_s;
  return claims.hold(same, [&] {
    return at_loop(drive) + ", end: the file has " + write_time(*drive.loop.end) + ", it is " +
           write_time(own);
  });
}

/// The stops are those of the passes and the planned ones; how long these are is checked there.
bool stops_hold(const Drive& drive, Claims& claims) {
  double sum = wish::planned_s(drive.loop);
  for (const wish::Pass& pass : drive.loop.passes) sum += pass.stop_s;
  return claims.agree(at_loop(drive) + ", stops",
                      {drive.loop.stop_seconds, sum, time_tolerance_s, "s"});
}

}  // namespace

const road::Turn* turn_between(const road::Roads& roads, StretchId from, StretchId to) {
  const auto row_of = [&](StateId state) -> const road::Turn* {
    for (const road::Turn& turn : roads.turns_from(state))
      if (roads.stretch_of(turn.to) == to) return &turn;
    return nullptr;
  };
  if (const road::Turn* plain = row_of(StateId{from.index()})) return plain;
  for (std::size_t copy = 0; copy < roads.copies.size(); ++copy)
    if (roads.copies[copy] == from)
      if (const road::Turn* turn = row_of(StateId{roads.stretch_count() + copy})) return turn;
  return nullptr;
}

bool range_holds(const wish::Range& said, const Taken& taken, const std::string& where,
                 Claims& claims) {
  const pace::Percentiles own = pace::percentiles_of(taken.driving);
  const auto agree = [&](std::string_view which, double file_s, double own_s, double tolerance_s) {
    return claims.agree(where + ", " + std::string(which) + " time",
                        {file_s, own_s + taken.stops_s, tolerance_s, "s"});
  };
  return agree("likely", said.likely, own.likely, time_tolerance_s) &&
         agree("low", said.low, own.low, spread_tolerance_s) &&
         agree("high", said.high, own.high, spread_tolerance_s);
}

bool limit_holds(const Drive& drive, const Pace& pace, std::size_t i, Claims& claims) {
  return claims.agree(at_stretch(drive, i), limit_text(drive.loop.stretches[i].limit),
                      limit_text(pace.limit(drive.stretches[i])));
}

std::vector<Taken> taken_before(const Drive& drive) {
  const Pace pace(drive.roads, {.level = drive.wish.level, .factor = drive.wish.pace},
                  drive.loop.start);
  std::vector<Taken> all;
  Taken so_far;
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    const road::Turn* turn =
        i == 0 ? nullptr : turn_between(drive.roads, drive.stretches[i - 1], drive.stretches[i]);
    if (turn != nullptr) so_far.driving += pace.at(*turn);
    all.push_back(so_far);
    so_far.driving += along(drive, pace, i);
    so_far.stops_s += stops_on(drive, i);
  }
  all.push_back(so_far);
  return all;
}

bool times_hold(const Drive& drive, Claims& claims) {
  if (!start_holds(drive, claims)) return false;
  const Pace pace(drive.roads, {.level = drive.wish.level, .factor = drive.wish.pace},
                  drive.loop.start);
  Taken so_far;
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    if (i > 0) {
      const road::Turn* turn =
          turn_between(drive.roads, drive.stretches[i - 1], drive.stretches[i]);
      if (!claims.hold(turn != nullptr, [&] {
            return at_stretch(drive, i) + ": the area has no turn into it from way " +
                   std::to_string(drive.loop.stretches[i - 1].way);
          }))
        return false;
      so_far.driving += pace.at(*turn);
    }
    if (!limit_holds(drive, pace, i, claims) ||
        !range_holds(drive.loop.stretches[i].arrive_s, so_far, at_stretch(drive, i), claims))
      return false;
    so_far.driving += along(drive, pace, i);
    so_far.stops_s += stops_on(drive, i);
  }
  return range_holds(drive.loop.seconds, {so_far.driving, 0}, at_loop(drive), claims);
}

bool window_holds(const Drive& drive, const Caps& caps, Claims& claims) {
  if (!stops_hold(drive, claims) || !end_holds(drive, claims)) return false;
  if (!drive.wish.through.empty()) return true;
  if (!claims.hold(drive.wish.minutes.has_value(),
                   [&] { return at_loop(drive) + ": the wish gives no minutes"; }))
    return false;
  const double most_s = 60.0 * (*drive.wish.minutes - drive.wish.reserve_minutes);
  // What a planned stop without a place would take stays free.
  const double free_s =
      static_cast<double>(wish::kept_for_stops_s(drive.wish)) - wish::planned_s(drive.loop);
  const double away_s = drive.loop.seconds.likely + drive.loop.stop_seconds + free_s;
  const bool fits = away_s <= most_s + time_tolerance_s &&
                    away_s >= caps.window_share * most_s - time_tolerance_s;
  return claims.hold(fits, [&] {
    return at_loop(drive) + ": it takes " + tenths(away_s / 60) + " min, not " +
           tenths(caps.window_share * most_s / 60) + " to " + tenths(most_s / 60) + " min";
  });
}

}  // namespace loopwright::proof
