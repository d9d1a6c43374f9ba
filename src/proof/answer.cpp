// Method:
// 1. The file must speak of this very area and of a wish that can be checked.
// 2. Two loops share what both drive of the same stretch, their ends left out; it is measured
//    against the shorter rest.
// 3. A want that is missing must be one of the wish's, and no loop may have enough of it (the first
//    has what the shortfall says was got); a want that a loop lacks must be missing. The nearest there is must be a chance of that want, and
//    "none in the area" must be so.
#include <algorithm>
#include <cstdlib>
#include <map>

#include "loopwright/wish/parts.hpp"
#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

using wish::Answer;
using wish::Missing;
using wish::Want;

constexpr std::int64_t most_start_off_s = 4 * 3600;

using Shares = std::map<StretchId, std::vector<Part>>;

/// What a drive covers of each stretch, its ends left out.
Shares middle_of(const Drive& drive, double exempt_m) {
  Shares shares;
  double total_m = 0;
  for (const Part& part : drive.parts) total_m += part.metres();
  double begin_m = 0;
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    const Part& part = drive.parts[i];
    const double from_m = std::max(exempt_m - begin_m, 0.0);
    const double to_m = std::min(part.metres(), total_m - exempt_m - begin_m);
    if (to_m > from_m)
      shares[drive.stretches[i]].push_back({part.from_m + from_m, part.from_m + to_m});
    begin_m += part.metres();
  }
  return shares;
}

double metres(const Shares& shares) {
  double sum = 0;
  for (const auto& [stretch, parts] : shares)
    for (const Part& part : parts) sum += part.metres();
  return sum;
}

double shared_m(const Shares& a, const Shares& b) {
  double sum = 0;
  for (const auto& [stretch, parts] : a) {
    const auto same = b.find(stretch);
    if (same == b.end()) continue;
    std::vector<Part> both = parts;
    both.insert(both.end(), same->second.begin(), same->second.end());
    sum += covered_m(parts) + covered_m(same->second) - covered_m(both);
  }
  return sum;
}

bool counts(const road::Chance& chance, const Want& want) {
  if (!road::meets(chance.kind, want.kind)) return false;
  return want.movement == road::Movement::none ? chance.movement != road::Movement::round
                                               : chance.movement == want.movement;
}

std::string at_missing(const Missing& missing) {
  return "shortfall, " + wish::write_want(missing.want);
}

bool nearest_holds(const road::Roads& roads, const Missing& missing, Claims& claims) {
  const auto is_one = [&](const road::Chance& chance) {
    return counts(chance, missing.want) && (!missing.nearest || chance.source == *missing.nearest);
  };
  const bool has = std::any_of(roads.chances.begin(), roads.chances.end(), is_one);
  if (missing.nearest)
    return claims.hold(has, [&] {
      return at_missing(missing) + ": the nearest, " + words_for(*missing.nearest) +
             ", is none of the area's";
    });
  // How far a chance leads into the kind it is joined to isn't recomputed.
  const bool says_none = missing.why.starts_with("the map has no ") && !missing.want.into;
  return claims.hold(!says_none || !has,
                     [&] { return at_missing(missing) + ": the area has some"; });
}

bool minutes_hold(const Missing& missing, Claims& claims) {
  const double there = missing.nearest_minutes.value_or(0);
  const double needs = missing.needs_minutes.value_or(there);
  return claims.hold(there >= 0 && needs >= there, [&] {
    return at_missing(missing) + ": " + tenths(there) + " min there can't be part of " +
           tenths(needs) + " min there and home";
  });
}

/// What was got of a missing want is what some part of the first loop got; others may have enough.
bool part_lacks(const Answer& answer, const Missing& missing, Claims& claims) {
  if (answer.loops.empty()) return true;
  bool lacks = false;
  for (const wish::LoopPart& part : answer.loops.front().parts)
    for (const wish::Met& met : part.met)
      lacks = lacks || (met.want == missing.want && met.got == missing.got);
  return claims.hold(lacks, [&] {
    return at_missing(missing) + ": no part of the first loop has " + std::to_string(missing.got);
  });
}

/// A missing want is asked for, and no loop has enough of it.
bool missing_holds(const Answer& answer, const Missing& missing, Claims& claims) {
  const std::vector<Want> wants = wish::all_wants(answer.wish);
  if (!claims.hold(std::find(wants.begin(), wants.end(), missing.want) != wants.end(),
                   [&] { return at_missing(missing) + ": the wish doesn't ask for it"; }))
    return false;
  const int asked = missing.want.count.value_or(0);
  if (!claims.hold(missing.got < asked, [&] {
        return at_missing(missing) + ": " + std::to_string(missing.got) + " got is enough";
      }))
    return false;
  if (!answer.wish.parts.empty()) return part_lacks(answer, missing, claims);
  for (const wish::Loop& loop : answer.loops)
    for (const wish::Met& met : loop.met) {
      if (met.want != missing.want) continue;
      const bool same_as_first = &loop != &answer.loops.front() || met.got == missing.got;
      if (!claims.hold(met.got < asked && same_as_first, [&] {
            return at_missing(missing) + ": loop " + std::to_string(loop.id) + " has " +
                   std::to_string(met.got);
          }))
        return false;
    }
  return true;
}

/// A better start is another one, and near: whether the streets are open then isn't recomputed.
bool better_starts_hold(const Answer& answer, Claims& claims) {
  for (const Instant& at : answer.shortfall->better_starts) {
    const std::int64_t off_s = std::abs(at.unix_s - answer.wish.start.unix_s);
    if (!claims.hold(off_s > 0 && off_s <= most_start_off_s, [&] {
          return "shortfall: the better start " + write_time(at) + " isn't within four hours of " +
                 write_time(answer.wish.start);
        }))
      return false;
  }
  return true;
}

/// Whatever a loop lacks is told as missing.
bool lacks_are_told(const Answer& answer, const wish::Loop& loop, Claims& claims) {
  std::vector<wish::Met> all = loop.met;
  for (const wish::LoopPart& part : loop.parts)
    all.insert(all.end(), part.met.begin(), part.met.end());
  for (const wish::Met& met : all) {
    const auto is_told = [&](const Missing& missing) { return missing.want == met.want; };
    const bool told = answer.shortfall && std::any_of(answer.shortfall->missing.begin(),
                                                      answer.shortfall->missing.end(), is_told);
    if (!claims.hold(told || met.got >= met.want.count.value_or(0), [&] {
          return "loop " + std::to_string(loop.id) + ": it has " + std::to_string(met.got) +
                 " of " + wish::write_want(met.want) + ", and the shortfall doesn't say so";
        }))
      return false;
  }
  return true;
}

}  // namespace

bool area_holds(const road::Roads& roads, const Answer& answer, Claims& claims) {
  const road::AreaInfo& own = roads.info();
  const auto& said = answer.area;
  return claims.agree("area, id", said.id, own.id) &&
         claims.agree("area, region", said.region, own.region.code) &&
         claims.agree("area, side", said.side, name(own.region.side)) &&
         claims.agree("area, map timestamp", said.map_timestamp, own.map_timestamp) &&
         claims.hold(
             answer.wish.level >= 1 && answer.wish.level <= 5,
             [&] { return "wish: there is no level " + std::to_string(answer.wish.level); }) &&
         claims.hold(answer.wish.pace >= wish::least_pace && answer.wish.pace <= wish::most_pace,
                     [&] { return "wish: there is no pace " + std::to_string(answer.wish.pace); });
}

bool loops_hold(const Answer& answer, Claims& claims) {
  const auto count = static_cast<int>(answer.loops.size());
  for (int i = 0; i < count; ++i)
    if (!claims.agree("loops, id of number " + std::to_string(i),
                      std::to_string(answer.loops[static_cast<std::size_t>(i)].id),
                      std::to_string(i + 1)))
      return false;
  const int asked = answer.wish.alternatives;
  const auto own =
      static_cast<int>(std::count_if(answer.loops.begin(), answer.loops.end(),
                                     [](const wish::Loop& loop) { return loop.variant.empty(); }));
  return claims.hold(own <= asked, [&] {
    return "loops: there are " + std::to_string(own) + ", asked were " + std::to_string(asked);
  }) && claims.hold(own == asked || answer.shortfall || !answer.fewer_because.empty(), [&] {
    return "loops: there are " + std::to_string(own) + " of " + std::to_string(asked) +
           " asked, and nothing says why";
  });
}

bool stops_are_told(std::span<const Drive> drives, const Answer& answer, Claims& claims) {
  std::size_t without = 0;
  for (const Drive& drive : drives) without += static_cast<std::size_t>(without_place(drive));
  const std::size_t told = answer.shortfall ? answer.shortfall->stops.size() : 0;
  return claims.hold(told == without, [&] {
    return "shortfall: " + std::to_string(told) + " planned stops without a place are told, not " +
           std::to_string(without);
  });
}

bool alternatives_hold(std::span<const Drive> drives, const Caps& caps, Claims& claims) {
  for (std::size_t a = 0; a < drives.size(); ++a)
    for (std::size_t b = a + 1; b < drives.size(); ++b) {
      if (!drives[b].loop.variant.empty()) break;  // and so are all behind it
      const Shares in_a = middle_of(drives[a], caps.overlap_exempt_m);
      const Shares in_b = middle_of(drives[b], caps.overlap_exempt_m);
      const double shorter_m = std::min(metres(in_a), metres(in_b));
      const double shared = shared_m(in_a, in_b);
      if (!claims.hold(shared < caps.overlap_share * shorter_m, [&] {
            return at_loop(drives[b]) + ": it shares " + tenths(shared) + " m of " +
                   tenths(shorter_m) + " m with " + at_loop(drives[a]) + ", not less than " +
                   tenths(100 * caps.overlap_share) + " %";
          }))
        return false;
    }
  return true;
}

bool shortfall_holds(const road::Roads& roads, const Answer& answer, Claims& claims) {
  if (!claims.hold(!answer.loops.empty() || answer.shortfall,
                   [] { return std::string("loops: there are none, and no shortfall"); }))
    return false;
  for (const wish::Loop& loop : answer.loops)
    if (!lacks_are_told(answer, loop, claims)) return false;
  if (!answer.shortfall) return true;
  if (!claims.hold(!answer.shortfall->why.empty(),
                   [] { return std::string("shortfall: it gives no reason"); }))
    return false;
  if (!better_starts_hold(answer, claims)) return false;
  for (const Missing& missing : answer.shortfall->missing)
    if (!missing_holds(answer, missing, claims) || !nearest_holds(roads, missing, claims) ||
        !minutes_hold(missing, claims))
      return false;
  return true;
}

}  // namespace loopwright::proof
