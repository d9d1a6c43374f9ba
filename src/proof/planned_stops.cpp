// 1. A brief serves the new kinds whose first pass comes next behind it, at most the time before; it is as
//    long as a brief for each of one or more of these.
// 2. The talk lies behind all briefs, at most its time before the end.
// 3. What was asked for and isn't planned has no place: none of the area's that lie in its time may be used
//    so long, nor is the brief there long enough to be lengthened.
#include <algorithm>
#include <cmath>

#include "loopwright/wish/stops.hpp"
#include "proof/kerbs.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

double brief_s(const Drive& drive) {
  return 60.0 * drive.wish.stops.brief_minutes;
}

/// Rows at whose beginning the first pass of each new kind begins, of those that are passed.
std::vector<std::size_t> first_passes(const Drive& drive) {
  std::vector<std::size_t> rows;
  if (drive.wish.stops.brief_minutes == 0) return rows;
  std::vector<wish::Pass> practised;
  for (const wish::Pass& pass : drive.loop.passes)
    if (is_practised(drive, pass)) practised.push_back(pass);
  for (const road::Kind kind : drive.wish.stops.new_kinds)
    if (const wish::Pass* first = wish::first_pass_of(practised, kind))
      rows.push_back(wish::begin_row(*first));
  return rows;
}

/// The last brief before a row; null when there is none near enough.
const Kerb* brief_before(const Drive& drive, const Kerbs& kerbs, std::size_t row) {
  const Kerb* last = nullptr;
  for (const Kerb& kerb : kerbs.all())
    if (kerb.row < row && kerb.claimed >= 0 &&
        drive.loop.pull_ups[static_cast<std::size_t>(kerb.claimed)].purpose == "brief")
      last = &kerb;
  const bool near_enough = last != nullptr && kerbs.driving_s(*last, row) <=
                                                  wish::brief_before_most_s + time_tolerance_s;
  return near_enough ? last : nullptr;
}

/// No stop is planned on the stretches of the door.
bool holds_door(const Drive& drive, std::size_t row) {
  return row == 0 || row + 1 == drive.stretches.size();
}

/// How many briefs a stop is long.
long briefs_in(const Drive& drive, const wish::PullUp& stop) {
  const double one_s = brief_s(drive);
  return one_s > 0 ? std::lround(stop.seconds / one_s) : 0;
}

bool brief_holds(const Drive& drive, const Kerbs& kerbs, std::size_t k, Claims& claims) {
  const wish::PullUp& stop = drive.loop.pull_ups[k];
  long serves = 0;
  for (const std::size_t row : first_passes(drive)) {
    const Kerb* kerb = brief_before(drive, kerbs, row);
    if (kerb != nullptr && kerb->claimed == static_cast<int>(k)) ++serves;
  }
  const long briefs = briefs_in(drive, stop);
  const bool whole = near(stop.seconds, static_cast<double>(briefs) * brief_s(drive), 0.001);
  return claims.hold(whole && briefs >= 1 && briefs <= serves, [&] {
    return at_loop(drive) + ", pull-up " + std::to_string(k) + ": a brief of " +
           tenths(stop.seconds / 60) + " min before the first passes of " + std::to_string(serves) +
           " new kinds";
  });
}

bool talk_holds(const Drive& drive, const Kerbs& kerbs, std::size_t k, Claims& claims) {
  const auto& places = drive.loop.pull_ups;
  const bool last = std::all_of(places.begin() + static_cast<std::ptrdiff_t>(k) + 1, places.end(),
                                [](const wish::PullUp& p) { return p.purpose.empty(); });
  const double left_s = kerbs.driving_s(*kerbs.of(k), drive.stretches.size());
  const bool holds = last && left_s <= wish::talk_before_end_most_s + time_tolerance_s &&
                     near(places[k].seconds, 60.0 * drive.wish.stops.talk_minutes, 0.001);
  return claims.hold(holds, [&] {
    return at_loop(drive) + ", pull-up " + std::to_string(k) +
           ": it is no talk as asked for, behind all other stops and near the end";
  });
}

/// No place before a row, within the time, may be used for a brief.
bool none_before(const Drive& drive, const Kerbs& kerbs, std::size_t row) {
  const double stay_s = brief_s(drive);
  const auto& all = kerbs.all();
  for (std::size_t k = all.size(); k-- > 0;) {
    if (all[k].row >= row || holds_door(drive, all[k].row)) continue;
    if (kerbs.driving_s(all[k], row) > wish::brief_before_most_s - time_tolerance_s) return true;
    if (all[k].stay_s > 0) return !kerbs.usable(all[k], all[k].stay_s + stay_s);
    if (kerbs.usable(all[k], stay_s)) return false;
  }
  return true;
}

/// Briefs that the loop's new kinds ask for and it doesn't hold, by the row before which.
std::vector<std::size_t> missing_briefs(const Drive& drive, const Kerbs& kerbs) {
  std::vector<std::size_t> missing;
  std::vector<long> served(drive.loop.pull_ups.size(), 0);
  std::vector<std::size_t> rows = first_passes(drive);
  std::sort(rows.begin(), rows.end());
  for (const std::size_t row : rows) {
    const Kerb* kerb = brief_before(drive, kerbs, row);
    if (kerb == nullptr) {
      missing.push_back(row);
      continue;
    }
    const auto k = static_cast<std::size_t>(kerb->claimed);
    if (++served[k] > briefs_in(drive, drive.loop.pull_ups[k])) missing.push_back(row);
  }
  return missing;
}

bool talk_is_missing(const Drive& drive) {
  if (drive.wish.stops.talk_minutes == 0) return false;
  const auto& places = drive.loop.pull_ups;
  return std::none_of(places.begin(), places.end(),
                      [](const wish::PullUp& p) { return p.purpose == "talk"; });
}

bool rest_has_no_place(const Drive& drive, const Kerbs& kerbs, Claims& claims) {
  for (const std::size_t row : missing_briefs(drive, kerbs))
    if (!claims.hold(none_before(drive, kerbs, row), [&] {
          return at_loop(drive) + ": there is a place for the brief before stretch " +
                 std::to_string(row);
        }))
      return false;
  // Behind a brief there may be no talk at the same place, so it isn't asked to be lengthened.
  if (!talk_is_missing(drive)) return true;
  const auto& all = kerbs.all();
  for (std::size_t k = all.size(); k-- > 0;) {
    if (holds_door(drive, all[k].row)) continue;
    const bool too_early = kerbs.driving_s(all[k], drive.stretches.size()) >
                           wish::talk_before_end_most_s - time_tolerance_s;
    if (too_early || all[k].stay_s > 0) return true;
    if (!claims.hold(!kerbs.usable(all[k], 60.0 * drive.wish.stops.talk_minutes), [&] {
          return at_loop(drive) + ": there is a place for the talk, on stretch " +
                 std::to_string(all[k].row);
        }))
      return false;
  }
  return true;
}

}  // namespace

bool planned_stops_hold(const Drive& drive, Claims& claims) {
  const auto& places = drive.loop.pull_ups;
  const bool any = std::any_of(places.begin(), places.end(),
                               [](const wish::PullUp& p) { return !p.purpose.empty(); });
  if (!any && wish::kept_for_stops_s(drive.wish) == 0) return true;
  const Kerbs kerbs(drive);
  for (std::size_t k = 0; k < places.size(); ++k) {
    if (!claims.hold(places[k].purpose.empty() || !holds_door(drive, places[k].stretch), [&] {
          return at_loop(drive) + ", pull-up " + std::to_string(k) +
                 ": a stop is planned on the stretch of the door";
        }))
      return false;
    if (places[k].purpose == "brief" && !brief_holds(drive, kerbs, k, claims)) return false;
    if (places[k].purpose == "talk" && !talk_holds(drive, kerbs, k, claims)) return false;
  }
  return rest_has_no_place(drive, kerbs, claims);
}

int without_place(const Drive& drive) {
  if (wish::kept_for_stops_s(drive.wish) == 0) return 0;
  return static_cast<int>(missing_briefs(drive, Kerbs(drive)).size()) +
         (talk_is_missing(drive) ? 1 : 0);
}

}  // namespace loopwright::proof
