// Method:
// 1. A pass counts for a want by its kind and movement; a bus lane asked for at its hours only with the
//    verdict worked out here; for a joined want only when another pass, of the second kind, covers the
//    stretch on which it ends.
// 2. Counting goes through the passes in driving order: by where they begin, then end, then kind. Of one
//    place at most so many count as the caps allow, and each begins the spacing asked after the last.
// 3. The passes a "max" want is practised by are named in the file: any choice will do that is spaced, keeps
//    the cap for places, and counts.
// 4. Value: with something as "max" or welcome the worth of the passes, less the kilometres of quiet
//    street driven twice; else less all road driven twice, as on the instructor's own drive. A welcome
//    pass has worth when no want takes it: one with a number takes the first so many that count, "max" all.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "loopwright/wish/turn_round.hpp"
#include "proof/tally.hpp"

namespace loopwright::proof {
namespace {

using road::Movement;
using wish::Want;

bool meets_want(const wish::Pass& pass, const Want& want) {
  if (!road::meets(pass.kind, want.kind)) return false;
  if (want.verdict && pass.verdict != want.verdict) return false;
  return want.movement == Movement::none ? pass.movement != Movement::round
                                         : pass.movement == want.movement;
}

/// Those that count for a want, in driving order.
std::vector<Found> counting(const Drive& drive, const Want& want, const Caps& caps) {
  const std::int64_t spacing_ms = asked_spacing_ms(drive, want).value_or(0);
  std::map<PlaceId, int> by_place;
  std::vector<Found> counting;
  std::int64_t next_ms = 0;
  for (const Found found : in_order(drive)) {
    if (begins_ms(drive, *found) < next_ms || !counts(drive, *found, want)) continue;
    if (by_place[found->place]++ >= place_cap(want.kind, caps)) continue;
    counting.push_back(found);
    if (spacing_ms > 0) next_ms = begins_ms(drive, *found) + spacing_ms;
  }
  return counting;
}

/// Worth in milli-units of the passes by which a "max" want is practised.
std::int64_t max_worth(const Drive& drive, const wish::Met& met, const Caps& caps) {
  std::map<std::pair<PlaceId, Movement>, std::size_t> times;
  const std::vector<Found> listed = as_listed(drive);
  std::int64_t sum = 0;
  for (const std::size_t number : *met.practised) {
    const std::size_t before = times[{listed[number]->place, listed[number]->pass.movement}]++;
    if (before < caps.repeat_worth.size()) sum += caps.repeat_worth[before];
  }
  return sum;
}

std::set<Found> taken_by_wants(const Drive& drive, const Caps& caps) {
  std::set<Found> taken;
  for (const Want& want : drive.wish.wants) {
    if (want.count) {
      const std::vector<Found> counted = counting(drive, want, caps);
      const auto most = static_cast<std::ptrdiff_t>(
          std::min(counted.size(), static_cast<std::size_t>(*want.count)));
      taken.insert(counted.begin(), counted.begin() + most);
    } else {
      for (const FoundPass& found : drive.passes)
        if (counts(drive, found, want)) taken.insert(&found);
    }
  }
  return taken;
}

}  // namespace

bool counts(const Drive& drive, const FoundPass& found, const Want& want) {
  if (!meets_want(found.pass, want) || !is_practised(drive, found.pass)) return false;
  const std::size_t end = found.pass.last;
  return !want.into ||
         std::any_of(drive.passes.begin(), drive.passes.end(), [&](const FoundPass& second) {
           return &second != &found && road::meets(second.pass.kind, *want.into) &&
                  second.pass.first <= end && end <= second.pass.last;
         });
}

bool practised_hold(const Drive& drive, const wish::Met& met, const Caps& caps, Claims& claims) {
  if (!are_practised(drive, met, {at_loop(drive)}, caps, claims)) return false;
  if (!met.practised || !drive.wish.place_passes) return true;
  const std::vector<Found> listed = as_listed(drive);
  std::map<PlaceId, int> by_place;
  for (const std::size_t number : *met.practised)
    if (!claims.hold(++by_place[listed[number]->place] <= *drive.wish.place_passes, [&] {
          return at_loop(drive) + ", practised for " + wish::write_want(met.want) + ", pass " +
                 std::to_string(number) + ": its place is practised too often";
        }))
      return false;
  return true;
}

int counted(const Drive& drive, const Want& want, const Caps& caps) {
  return static_cast<int>(counting(drive, want, caps).size());
}

std::int64_t value_of(const Drive& drive, const Caps& caps) {
  if (!drive.wish.parts.empty()) return value_in_parts(drive, caps);
  const auto& wants = drive.wish.wants;
  const bool has_worth =
      wish::welcomes_practice(drive.wish) ||
      std::any_of(wants.begin(), wants.end(), [](const Want& want) { return !want.count; });
  const bool own_drive = !drive.wish.through.empty();
  if (own_drive || !has_worth) return -std::llround(practised_twice(drive, 0));
  std::int64_t sum = welcome_worth(drive, taken_by_wants(drive, caps), caps) -
                     std::llround(practised_twice(drive, road::piece_flag::quiet));
  for (const wish::Met& met : drive.loop.met)
    if (met.practised) sum += max_worth(drive, met, caps);
  return sum;
}

}  // namespace loopwright::proof
