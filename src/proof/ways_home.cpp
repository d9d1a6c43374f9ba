// 1. A way home is laid behind the loop's rows that lead to where it is left, as many as the longest turn
//    rule has, and checked as a drive is: names, parts, connection, access, turns, the clock.
// 2. It ends where the loop ends.
// 3. Its times go on from those of the loop at the end of that row; its seconds are their sum.
// 4. How hard it is: the hardest of what it passes behind that row. Nothing avoided is passed.
#include <algorithm>
#include <string>

#include "loopwright/road/kind_table.hpp"
#include "proof/checks.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

/// Rows of the loop from `first` to the one that is left, and the way's rows.
wish::Loop laid_behind(const Drive& drive, const wish::WayHome& way, std::size_t first) {
  wish::Loop loop;
  loop.id = drive.loop.id;
  loop.start = drive.loop.start;
  const auto& rows = drive.loop.stretches;
  loop.stretches.assign(rows.begin() + static_cast<std::ptrdiff_t>(first),
                        rows.begin() + static_cast<std::ptrdiff_t>(way.from_stretch) + 1);
  loop.stretches.insert(loop.stretches.end(), way.stretches.begin(), way.stretches.end());
  return loop;
}

std::string name_of(const wish::WayHome& way) {
  return ", way home from stretch " + std::to_string(way.from_stretch);
}

Drive drive_of(const Drive& drive, const wish::Loop& loop, const wish::WayHome& way) {
  const std::size_t before = loop.stretches.size() - way.stretches.size();
  return {drive.roads, drive.wish, loop, drive.setting, {}, {}, {}, name_of(way), before};
}

std::size_t longest_rule(const road::Roads& roads) {
  std::size_t longest = 1;
  for (const road::TurnRule& rule : roads.turn_rules)
    longest = std::max<std::size_t>(longest, rule.path_count);
  return longest;
}

/// It ends on the piece and at the metre at which the loop does.
bool end_holds(const Drive& drive, const Drive& home, Claims& claims) {
  const auto along_m = [](const Drive& one) {
    const StretchId s = one.stretches.back();
    const double to_m = one.parts.back().to_m;
    return s.against() ? one.roads.piece(s).length_m - to_m : to_m;
  };
  const bool same = drive.stretches.back().piece() == home.stretches.back().piece() &&
                    near(along_m(drive), along_m(home), 2 * length_tolerance_m);
  return claims.hold(same, [&] { return at_loop(home) + ": it doesn't end where the loop ends"; });
}

/// When the way begins, and ends once it is checked.
struct WayTimes {
  Taken begin;
  wish::Range end;
};

bool times_hold(const Drive& home, const wish::WayHome& way, const pace::Pace& pace,
                WayTimes& times, Claims& claims) {
  Taken so_far = times.begin;
  const std::int64_t begin_ms = so_far.driving.likely_ms;
  for (std::size_t i = home.before; i < home.stretches.size(); ++i) {
    const road::Turn* turn = turn_between(home.roads, home.stretches[i - 1], home.stretches[i]);
    if (!claims.hold(turn != nullptr,
                     [&] { return at_stretch(home, i) + ": the area has no turn into it"; }))
      return false;
    so_far.driving += pace.at(*turn);
    const Part& part = home.parts[i];
    if (!limit_holds(home, pace, i, claims) ||
        !range_holds(home.loop.stretches[i].arrive_s, so_far, at_stretch(home, i), claims) ||
        !claims.agree(at_stretch(home, i) + ", length",
                      {home.loop.stretches[i].metres, part.metres(), length_tolerance_m, "m"}))
      return false;
    so_far.driving += pace.along_part(home.stretches[i], part.from_m, part.to_m);
  }
  const pace::Percentiles p = pace::percentiles_of(so_far.driving);
  times.end = {p.low + so_far.stops_s, p.likely + so_far.stops_s, p.high + so_far.stops_s};
  const auto took_ms = static_cast<double>(so_far.driving.likely_ms - begin_ms);
  return claims.agree(at_loop(home) + ", time",
                      {way.seconds, took_ms / 1000, 2 * time_tolerance_s, "s"});
}

/// What is passed behind the row that is left.
bool passes_hold(const Drive& drive, const wish::WayHome& way, Claims& claims) {
  const wish::Loop loop = laid_behind(drive, way, way.from_stretch);
  Drive home = drive_of(drive, loop, way);
  if (!names_hold(home, claims) || !parts_hold(home, claims)) return false;
  find_passes(home);
  int hardest = 0;
  for (const FoundPass& found : home.passes) {
    if (found.pass.last == 0) continue;
    if (!road::is_of_choice(found.pass.kind)) hardest = std::max(hardest, found.pass.hardness);
    const auto& avoids = drive.wish.avoids;
    const bool avoided = std::any_of(avoids.begin(), avoids.end(), [&](const wish::Avoid& avoid) {
      return wish::is_avoided(avoid, found.pass.kind, found.pass.movement);
    });
    if (!claims.hold(!avoided, [&] {
          return at_loop(home) + ": it passes " + std::string(road::name(found.pass.kind)) +
                 ", which the wish avoids";
        }))
      return false;
  }
  return claims.agree(at_loop(home) + ", hardest", std::to_string(way.hardest),
                      std::to_string(hardest));
}

class WaysProof {
 public:
  WaysProof(const Drive& drive, const Bans& bans)
      : drive_(drive),
        bans_(bans),
        pace_(drive.roads, {.level = drive.wish.level, .factor = drive.wish.pace},
              drive.loop.start),
        before_(taken_before(drive)),
        longest_(longest_rule(drive.roads)) {}

  bool holds(const wish::WayHome& way, Claims& claims) const {
    const std::size_t row = way.from_stretch;
    const bool leaves = row + 1 < drive_.stretches.size() && !way.stretches.empty();
    if (!claims.hold(leaves, [&] { return at_loop(drive_) + name_of(way) + ": it leads nowhere"; }))
      return false;
    wish::Loop loop = laid_behind(drive_, way, row + 1 < longest_ ? 0 : row + 1 - longest_);
    Drive home = drive_of(drive_, loop, way);
    if (!names_hold(home, claims) || !parts_hold(home, claims) || !connection_holds(home, claims) ||
        !access_holds(home, claims) || !turns_hold(home, bans_, claims) ||
        !end_holds(drive_, home, claims))
      return false;
    WayTimes times{at_end_of(row), {}};
    if (!times_hold(home, way, pace_, times, claims)) return false;
    loop.seconds.high = times.end.high;
    return hours_hold(home, bans_, claims) && passes_hold(drive_, way, claims);
  }

 private:
  /// Driving and stops up to the end of a row that isn't the last.
  [[nodiscard]] Taken at_end_of(std::size_t row) const {
    const Part& part = drive_.parts[row];
    return {before_[row].driving + pace_.along_part(drive_.stretches[row], part.from_m, part.to_m),
            before_[row + 1].stops_s};
  }

  const Drive& drive_;
  const Bans& bans_;
  pace::Pace pace_;
  std::vector<Taken> before_;
  std::size_t longest_;
};

}  // namespace

bool ways_home_hold(const Drive& drive, const Bans& bans, Claims& claims) {
  if (drive.loop.ways_home.empty()) return true;
  const WaysProof proof(drive, bans);
  return std::all_of(drive.loop.ways_home.begin(), drive.loop.ways_home.end(),
                     [&](const wish::WayHome& way) { return proof.holds(way, claims); });
}

}  // namespace loopwright::proof
