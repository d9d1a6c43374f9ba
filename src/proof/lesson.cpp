// What a loop says of the parts of a lesson and of who drives.
// 1. Practice: the rows between those on which the places lie at which the seats are changed; without such
//    places all rows. A pass is practised when all of it, its entry too, lies there.
// 2. The parts follow each other over the practice without a gap. Each lasts its minutes, within the leeway; the
//    last also takes what is left. What the planned stops take isn't counted.
// 3. A part drives only roads it keeps to, but for a link to them before and, in the last, one home behind.
// 4. Nothing that touches a part is harder than it allows; nothing at the beginning or the end of a lesson that is
//    to be easy first is harder than the ramp, or the shortfall says so.
#include <algorithm>

#include "loopwright/road/kind_table.hpp"
#include "loopwright/wish/parts.hpp"
#include "proof/checks.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

using wish::Pass;
using wish::RowSpan;

constexpr double part_tolerance_s = 0.05;  // of a sum of times that each have their tolerance

std::string at_part(const Drive& drive, std::size_t p) {
  return at_loop(drive) + ", part " + std::to_string(p + 1);
}

std::string span_text(RowSpan rows) {
  return "stretches " + std::to_string(rows.first) + " to " + std::to_string(rows.last);
}

std::size_t last_row(const Drive& drive) {
  return drive.stretches.size() - 1;
}

/// Likely seconds at the beginning of a row, or at the end of the drive.
double time_at(const Drive& drive, std::size_t row) {
  const wish::Loop& loop = drive.loop;
  return row < loop.stretches.size() ? loop.stretches[row].arrive_s.likely
                                     : loop.seconds.likely + loop.stop_seconds;
}

/// Seconds on the rows from first to before end, planned stops left out.
double lasts_s(const Drive& drive, std::size_t first, std::size_t end) {
  double seconds = time_at(drive, end) - time_at(drive, first);
  for (const wish::PullUp& stop : drive.loop.pull_ups)
    if (stop.stretch >= first && stop.stretch < end) seconds -= stop.seconds;
  return seconds;
}

/// The road of a row goes by a place.
bool goes_by(const Drive& drive, std::size_t row, Point place) {
  const auto line = drive.roads.shape_of(drive.stretches[row].piece());
  return nearest_on_line(line, place).off_m <= most_off_road_m + length_tolerance_m;
}

bool seats_hold(const Drive& drive, RowSpan rows, Claims& claims) {
  const auto& out = drive.wish.drive_out;
  const auto& back = drive.wish.drive_back;
  const bool out_holds =
      out ? rows.first > 0 && goes_by(drive, rows.first - 1, *out) : rows.first == 0;
  const bool back_holds = back ? rows.last < last_row(drive) && goes_by(drive, rows.last + 1, *back)
                               : rows.last == last_row(drive);
  return claims.hold(out_holds, [&] {
    return at_loop(drive) + ": the learner doesn't begin where the wish says, but with stretch " +
           std::to_string(rows.first);
  }) && claims.hold(back_holds, [&] {
    return at_loop(drive) + ": the learner doesn't end where the wish says, but with stretch " +
           std::to_string(rows.last);
  });
}

bool rows_hold(const Drive& drive, Claims& claims) {
  const auto& parts = drive.loop.parts;
  if (!claims.agree(at_loop(drive) + ", parts", std::to_string(parts.size()),
                    std::to_string(drive.wish.parts.size())))
    return false;
  const RowSpan practice = wish::practice_of(drive.loop);
  std::size_t next = practice.first;
  for (std::size_t p = 0; p < parts.size(); ++p) {
    const bool last = p + 1 == parts.size();
    const bool follows = parts[p].first == next && parts[p].last >= parts[p].first &&
                         (last ? parts[p].last == practice.last : parts[p].last < practice.last);
    if (!claims.hold(follows, [&] {
          return at_part(drive, p) + ": " + span_text({parts[p].first, parts[p].last}) +
                 " don't follow each other over " + span_text(practice);
        }))
      return false;
    next = parts[p].last + 1;
  }
  return true;
}

bool minutes_hold(const Drive& drive, const Caps& caps, std::size_t p, Claims& claims) {
  const wish::LoopPart& rows = drive.loop.parts[p];
  const double asked_s = 60.0 * drive.wish.parts[p].minutes;
  const double leeway_s = std::max(60 * caps.part_leeway_minutes, caps.part_leeway_share * asked_s);
  const double driven_s = lasts_s(drive, rows.first, rows.last + 1);
  const bool last = p + 1 == drive.loop.parts.size();
  const bool holds = driven_s >= asked_s - leeway_s - part_tolerance_s &&
                     (last || driven_s <= asked_s + leeway_s + part_tolerance_s);
  return claims.hold(holds, [&] {
    return at_part(drive, p) + ": it lasts " + tenths(driven_s / 60) + " min, asked were " +
           tenths(asked_s / 60);
  });
}

/// Rows at one end of a part that are none of its own roads last no longer than a link may.
bool link_holds(const Drive& drive, const Caps& caps, RowSpan link, Claims& claims) {
  const double seconds = lasts_s(drive, link.first, link.last + 1);
  return claims.hold(seconds <= 60 * caps.part_link_minutes + part_tolerance_s, [&] {
    return at_loop(drive) + ", " + span_text(link) + ": a link of " + tenths(seconds / 60) +
           " min, more than " + tenths(caps.part_link_minutes);
  });
}

bool roads_hold(const Drive& drive, const Caps& caps, std::size_t p, Claims& claims) {
  const wish::RoadsAllowed roads = drive.wish.parts[p].roads;
  if (roads == wish::RoadsAllowed::any) return true;
  const wish::LoopPart& rows = drive.loop.parts[p];
  std::vector<std::size_t> own;
  for (std::size_t row = rows.first; row <= rows.last; ++row) {
    const bool quiet =
        (drive.roads.piece(drive.stretches[row]).flags & road::piece_flag::quiet) != 0;
    if (quiet == (roads == wish::RoadsAllowed::quiet)) own.push_back(row);
  }
  if (!claims.hold(!own.empty(), [&] {
        return at_part(drive, p) + ": none of its roads are " + std::string(wish::name(roads));
      }))
    return false;
  for (std::size_t k = 1; k < own.size(); ++k)
    if (!claims.hold(own[k] == own[k - 1] + 1, [&] {
          return at_stretch(drive, own[k - 1] + 1) + ": it isn't one of the " +
                 std::string(wish::name(roads)) + " roads that part " + std::to_string(p + 1) +
                 " keeps to";
        }))
      return false;
  const bool last = p + 1 == drive.loop.parts.size();
  if (!claims.hold(last || own.back() == rows.last, [&] {
        return at_stretch(drive, own.back() + 1) + ": it isn't one of the " +
               std::string(wish::name(roads)) + " roads that part " + std::to_string(p + 1) +
               " keeps to";
      }))
    return false;
  return (own.front() == rows.first ||
          link_holds(drive, caps, {rows.first, own.front() - 1}, claims)) &&
         (own.back() == rows.last || link_holds(drive, caps, {own.back() + 1, rows.last}, claims));
}

bool hardest_holds(const Drive& drive, std::size_t p, Claims& claims) {
  const std::optional<int>& hardest = drive.wish.parts[p].hardest;
  if (!hardest) return true;
  const wish::LoopPart& rows = drive.loop.parts[p];
  for (const FoundPass& found : drive.passes) {
    const bool there = wish::begin_row(found.pass) <= rows.last && found.pass.last >= rows.first;
    if (!claims.hold(
            !there || found.pass.hardness <= *hardest || road::is_of_choice(found.pass.kind), [&] {
              return at_part(drive, p) + ": it passes " + std::string(road::name(found.pass.kind)) +
                     " (" + words_for(found.pass.source) + ") of hardness " +
                     std::to_string(found.pass.hardness) + ", more than " +
                     std::to_string(*hardest);
            }))
      return false;
  }
  return true;
}

/// How hard a pass may be that begins and ends at these moments of the practice; 5: anything.
int most_on_ramp(const Drive& drive, const Caps& caps, double begins_s, double ends_s) {
  const RowSpan practice = wish::practice_of(drive.loop);
  const double from_s = time_at(drive, practice.first), to_s = time_at(drive, practice.last + 1);
  int most = 5;
  if (begins_s < from_s + caps.easy_first_share * (to_s - from_s) - part_tolerance_s)
    most = std::max(drive.wish.level - caps.easy_below_level, caps.easy_least);
  if (ends_s > to_s - caps.easy_last_share * (to_s - from_s) + part_tolerance_s)
    most = std::min(most, caps.easy_last_hardest);
  return most;
}

}  // namespace

bool is_practised(const Drive& drive, const Pass& pass) {
  const RowSpan practice = wish::practice_of(drive.loop);
  return pass.first >= practice.first && pass.last <= practice.last;
}

bool is_driven_by_learner(const Drive& drive, std::size_t row) {
  const RowSpan practice = wish::practice_of(drive.loop);
  return row >= practice.first && row <= practice.last;
}

const wish::Part* part_at(const Drive& drive, const Pass& pass) {
  for (std::size_t p = 0; p < drive.loop.parts.size(); ++p)
    if (wish::begin_row(pass) >= drive.loop.parts[p].first &&
        wish::begin_row(pass) <= drive.loop.parts[p].last)
      return &drive.wish.parts[p];
  return nullptr;
}

bool practice_holds(const Drive& drive, Claims& claims) {
  const bool asked = drive.wish.drive_out || drive.wish.drive_back;
  if (!claims.hold(!asked || drive.loop.practice, [&] {
        return at_loop(drive) + ": it doesn't say which stretches are the learner's";
      }))
    return false;
  const RowSpan rows = wish::practice_of(drive.loop);
  if (!claims.hold(rows.first <= rows.last && rows.last <= last_row(drive),
                   [&] { return at_loop(drive) + ": the learner drives nothing"; }))
    return false;
  return seats_hold(drive, rows, claims) && rows_hold(drive, claims);
}

bool lesson_parts_hold(const Drive& drive, const Caps& caps, Claims& claims) {
  for (std::size_t p = 0; p < drive.loop.parts.size(); ++p)
    if (!minutes_hold(drive, caps, p, claims) || !roads_hold(drive, caps, p, claims) ||
        !hardest_holds(drive, p, claims) || !part_counts_hold(drive, p, caps, claims))
      return false;
  return true;
}

const FoundPass* off_ramp(const Drive& drive, const Caps& caps) {
  if (!drive.wish.easy_first) return nullptr;
  for (const FoundPass& found : drive.passes) {
    const RowSpan practice = wish::practice_of(drive.loop);
    const bool there =
        wish::begin_row(found.pass) <= practice.last && found.pass.last >= practice.first;
    if (!there || road::is_of_choice(found.pass.kind)) continue;
    const int most = most_on_ramp(drive, caps, time_at(drive, wish::begin_row(found.pass)),
                                  time_at(drive, wish::end_row(found.pass)));
    if (found.pass.hardness > most) return &found;
  }
  return nullptr;
}

bool ramp_is_told(std::span<const Drive> drives, const wish::Answer& answer, const Caps& caps,
                  Claims& claims) {
  const bool told = answer.shortfall && answer.shortfall->why.starts_with(wish::not_easy);
  for (const Drive& drive : drives) {
    const FoundPass* off = off_ramp(drive, caps);
    if (!claims.hold(off == nullptr || told, [&] {
          return at_loop(drive) + ": it was to be easy first, but passes " +
                 std::string(road::name(off->pass.kind)) + " (" + words_for(off->pass.source) +
                 ") of hardness " + std::to_string(off->pass.hardness) + " at stretch " +
                 std::to_string(off->pass.first);
        }))
      return false;
  }
  return true;
}

}  // namespace loopwright::proof
