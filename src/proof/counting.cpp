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

#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

using road::Movement;
using wish::Want;
using Found = const FoundPass*;

/// Times in the file are rounded to a tenth of a second.
constexpr std::int64_t rounded_ms = 200;

bool meets_want(const wish::Pass& pass, const Want& want) {
  if (!road::meets(pass.kind, want.kind)) return false;
  if (want.verdict && pass.verdict != want.verdict) return false;
  return want.movement == Movement::none ? pass.movement != Movement::round
                                         : pass.movement == want.movement;
}

std::vector<Found> in_order(const Drive& drive) {
  std::vector<Found> order;
  for (const FoundPass& found : drive.passes) order.push_back(&found);
  std::stable_sort(order.begin(), order.end(), [](Found a, Found b) {
    return std::tuple(a->pass.first, a->pass.last, a->pass.kind) <
           std::tuple(b->pass.first, b->pass.last, b->pass.kind);
  });
  return order;
}

/// Seconds asked between two passes that count; none when the wish names no spacing for it.
std::optional<int> spacing_of(const Drive& drive, const Want& want) {
  std::optional<int> most;
  for (const wish::Spacing& spacing : drive.wish.spacings)
    if (road::meets(want.kind, spacing.kind)) most = std::max(most.value_or(0), spacing.seconds);
  return most;
}

std::int64_t begins_ms(const Drive& drive, const FoundPass& found) {
  return std::llround(1000 * drive.loop.stretches[found.pass.first].arrive_s.likely);
}

int place_cap(road::Kind kind, const Caps& caps) {
  return road::is_stretch_like(kind) ? caps.stretch_passes : caps.junction_passes;
}

/// Those that count for a want, in driving order.
std::vector<Found> counting(const Drive& drive, const Want& want, const Caps& caps) {
  const std::int64_t spacing_ms = std::int64_t{1000} * spacing_of(drive, want).value_or(0);
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

/// In the order of the file's list, as passes_hold compares them.
std::vector<Found> as_listed(const Drive& drive) {
  const std::vector<wish::Pass>& said = drive.loop.passes;
  std::vector<std::size_t> order(said.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::tuple(said[a].first, said[a].last, said[a].kind) <
           std::tuple(said[b].first, said[b].last, said[b].kind);
  });
  const std::vector<Found> own = in_order(drive);
  std::vector<Found> listed(said.size());
  for (std::size_t i = 0; i < order.size(); ++i) listed[order[i]] = own[i];
  return listed;
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

std::int64_t welcome_worth(const Drive& drive, const Caps& caps) {
  if (drive.wish.welcome.empty()) return 0;
  const std::set<Found> taken = taken_by_wants(drive, caps);
  std::map<PlaceId, int> by_place;
  std::int64_t sum = 0;
  for (const FoundPass& found : drive.passes) {
    const bool welcome =
        std::any_of(drive.wish.welcome.begin(), drive.wish.welcome.end(),
                    [&](road::Kind kind) { return road::meets(found.pass.kind, kind); });
    if (!welcome || !is_practised(drive, found.pass) || found.pass.movement == Movement::round ||
        taken.contains(&found))
      continue;
    if (by_place[found.place]++ < place_cap(found.pass.kind, caps)) sum += caps.welcome_worth;
  }
  return sum;
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
  const std::string where = at_loop(drive) + ", practised for " + wish::write_want(met.want);
  if (!claims.hold(met.practised.has_value() == !met.want.count, [&] {
        return where + (met.practised ? ": it isn't wanted as max"
                                      : ": the file doesn't name the passes; make it again");
      }))
    return false;
  if (!met.practised) return true;
  const std::optional<int> asked_s = spacing_of(drive, met.want);
  const std::int64_t spacing_ms = std::llround(1000 * (asked_s ? *asked_s : caps.spacing_s));
  const std::vector<Found> listed = as_listed(drive);
  std::map<PlaceId, int> by_place;
  std::optional<std::size_t> last;
  for (const std::size_t number : *met.practised) {
    const Found found = listed[number];
    const std::string pass = where + ", pass " + std::to_string(number);
    const bool spaced =
        !last || (number > *last && begins_ms(drive, *found) >=
                                        begins_ms(drive, *listed[*last]) + spacing_ms - rounded_ms);
    const int of_place = ++by_place[found->place];
    if (!claims.hold(counts(drive, *found, met.want),
                     [&] { return pass + ": it doesn't count for that"; }) ||
        !claims.hold(spaced, [&] { return pass + ": it begins too soon after the one before"; }) ||
        !claims.hold(!drive.wish.place_passes || of_place <= *drive.wish.place_passes,
                     [&] { return pass + ": its place is practised too often"; }))
      return false;
    last = number;
  }
  return true;
}

int counted(const Drive& drive, const Want& want, const Caps& caps) {
  return static_cast<int>(counting(drive, want, caps).size());
}

std::int64_t value_of(const Drive& drive, const Caps& caps) {
  if (!drive.wish.parts.empty()) return value_in_parts(drive, caps);
  const auto& wants = drive.wish.wants;
  const bool has_worth =
      !drive.wish.welcome.empty() ||
      std::any_of(wants.begin(), wants.end(), [](const Want& want) { return !want.count; });
  const bool own_drive = !drive.wish.through.empty();
  if (own_drive || !has_worth) return -std::llround(practised_twice(drive, 0));
  std::int64_t sum =
      welcome_worth(drive, caps) - std::llround(practised_twice(drive, road::piece_flag::quiet));
  for (const wish::Met& met : drive.loop.met)
    if (met.practised) sum += max_worth(drive, met, caps);
  return sum;
}

}  // namespace loopwright::proof
