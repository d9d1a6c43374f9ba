// What each part of a lesson got, and what the lesson is worth.
// 1. A pass is of the part in which it begins, and counts for that part's wants alone.
// 2. Of one place at most so many passes count for the same want as the caps allow, all parts together, those of
//    earlier parts first. Within a part they begin the spacing asked apart.
// 3. Worth: the passes that the file names for a "max" want, the k-th of a place and movement in the whole lesson
//    as the caps say; and what is welcome and no want of its part takes.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "loopwright/wish/parts.hpp"
#include "loopwright/wish/turn_round.hpp"
#include "proof/tally.hpp"

namespace loopwright::proof {
namespace {

using wish::Want;

bool is_same(const Want& a, const Want& b) {
  return a.kind == b.kind && a.movement == b.movement && a.verdict == b.verdict && a.into == b.into;
}

bool is_of_part(const Drive& drive, std::size_t p, Found found) {
  return part_at(drive, found->pass) == &drive.wish.parts[p];
}

/// Those that count for a want in a part. by_place: what the same want tried to count in earlier ones, filled on.
std::vector<Found> counting(const Drive& drive, std::size_t p, const Want& want, const Caps& caps,
                            std::map<PlaceId, int>& by_place) {
  const std::int64_t spacing_ms = asked_spacing_ms(drive, want).value_or(0);
  std::vector<Found> counting;
  std::int64_t next_ms = 0;
  for (const Found found : in_order(drive)) {
    if (!is_of_part(drive, p, found) || begins_ms(drive, *found) < next_ms ||
        !counts(drive, *found, want))
      continue;
    if (++by_place[found->place] > place_cap(found->pass.kind, caps)) continue;
    counting.push_back(found);
    if (spacing_ms > 0) next_ms = begins_ms(drive, *found) + spacing_ms;
  }
  return counting;
}

/// The same, earlier parts gone through first.
std::vector<Found> counted(const Drive& drive, std::size_t p, const Want& want, const Caps& caps) {
  std::map<PlaceId, int> by_place;
  std::vector<Found> found;
  for (std::size_t part = 0; part <= p; ++part)
    for (const Want& other : drive.wish.parts[part].wants)
      if (is_same(other, want)) found = counting(drive, part, other, caps, by_place);
  return found;
}

/// No place is practised more often than the wish allows, all parts together.
bool places_hold(const Drive& drive, std::size_t p, const Want& want, Claims& claims) {
  if (want.count || !drive.wish.place_passes) return true;
  const std::vector<Found> listed = as_listed(drive);
  std::map<PlaceId, int> by_place;
  for (std::size_t part = 0; part <= p; ++part)
    for (const wish::Met& met : drive.loop.parts[part].met) {
      if (!is_same(met.want, want) || !met.practised) continue;
      for (const std::size_t number : *met.practised) {
        const int of_place = ++by_place[listed[number]->place];
        if (!claims.hold(of_place <= *drive.wish.place_passes, [&] {
              return at_loop(drive) + ", part " + std::to_string(part + 1) + ", pass " +
                     std::to_string(number) + ": its place is practised too often";
            }))
          return false;
      }
    }
  return true;
}

std::int64_t max_worth(const Drive& drive, const Caps& caps) {
  struct Times {
    Want want;
    std::map<std::pair<PlaceId, road::Movement>, std::size_t> of;
  };
  const std::vector<Found> listed = as_listed(drive);
  std::vector<Times> all;
  std::int64_t sum = 0;
  for (const wish::LoopPart& part : drive.loop.parts)
    for (const wish::Met& met : part.met) {
      if (!met.practised) continue;
      auto times = std::find_if(all.begin(), all.end(),
                                [&](const Times& one) { return is_same(one.want, met.want); });
      if (times == all.end()) times = all.insert(all.end(), {met.want, {}});
      for (const std::size_t number : *met.practised) {
        const Found found = listed[number];
        const std::size_t before = times->of[{found->place, found->pass.movement}]++;
        if (before < caps.repeat_worth.size()) sum += caps.repeat_worth[before];
      }
    }
  return sum;
}

std::set<Found> taken_by_wants(const Drive& drive, const Caps& caps) {
  std::set<Found> taken;
  for (std::size_t p = 0; p < drive.wish.parts.size(); ++p)
    for (const Want& want : drive.wish.parts[p].wants) {
      if (want.count) {
        const std::vector<Found> found = counted(drive, p, want, caps);
        const auto most = std::min(found.size(), static_cast<std::size_t>(*want.count));
        taken.insert(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(most));
        continue;
      }
      for (const FoundPass& found : drive.passes)
        if (is_of_part(drive, p, &found) && counts(drive, found, want)) taken.insert(&found);
    }
  return taken;
}

}  // namespace

bool part_counts_hold(const Drive& drive, std::size_t p, const Caps& caps, Claims& claims) {
  const auto& met = drive.loop.parts[p].met;
  const auto& wants = drive.wish.parts[p].wants;
  const std::string where = at_loop(drive) + ", part " + std::to_string(p + 1);
  if (!claims.agree(where + ", wants counted", std::to_string(met.size()),
                    std::to_string(wants.size())))
    return false;
  for (std::size_t i = 0; i < met.size(); ++i) {
    const std::string want = wish::write_want(wants[i]);
    if (!claims.agree(where + ", want " + std::to_string(i), wish::write_want(met[i].want), want) ||
        !claims.agree(where + ", passes that count for " + want, std::to_string(met[i].got),
                      std::to_string(counted(drive, p, wants[i], caps).size())) ||
        !are_practised(drive, met[i], {where, p}, caps, claims) ||
        !places_hold(drive, p, wants[i], claims))
      return false;
  }
  return true;
}

std::int64_t value_in_parts(const Drive& drive, const Caps& caps) {
  const std::vector<Want> wants = wish::all_wants(drive.wish);
  const bool has_worth =
      wish::welcomes_practice(drive.wish) ||
      std::any_of(wants.begin(), wants.end(), [](const Want& want) { return !want.count; });
  if (!has_worth) return -std::llround(practised_twice(drive, 0));
  return max_worth(drive, caps) + welcome_worth(drive, taken_by_wants(drive, caps), caps) -
         std::llround(practised_twice(drive, road::piece_flag::quiet));
}

}  // namespace loopwright::proof
