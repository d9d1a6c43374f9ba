// Method:
// 1. What a loop got of each want is counted from the drive's own passes, at most so many of each
//    place as the caps allow; a bus lane asked for at its hours only with the verdict worked out here.
// 2. Nothing avoided is passed, nor does any stretch carry an avoided kind; nothing is harder than
//    the learner's level allows, unless its kind was asked for by name; no quiet street is driven
//    more often than its cap, but on the instructor's own drive.
//    Manoeuvres are done only when asked for, at most so many as the wish names.
// 3. The value is worked out again by its definition: with "max" wants the worth of their passes,
//    spaced, less the kilometres of quiet street driven twice; else less all road driven twice, as on
//    the instructor's own drive.
#include <algorithm>
#include <cmath>
#include <map>

#include "loopwright/road/kind_table.hpp"
#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

using road::Movement;
using wish::Want;

bool counts(const wish::Pass& pass, const Want& want) {
  if (!road::meets(pass.kind, want.kind)) return false;
  if (want.verdict && pass.verdict != want.verdict) return false;
  return want.movement == Movement::none ? pass.movement != Movement::round
                                         : pass.movement == want.movement;
}

int counted(const Drive& drive, const Want& want, const Caps& caps) {
  std::map<PlaceId, int> by_place;
  for (const FoundPass& found : drive.passes)
    if (counts(found.pass, want)) ++by_place[found.place];
  const int most = road::is_stretch_like(want.kind) ? caps.stretch_passes : caps.junction_passes;
  int sum = 0;
  for (const auto& [place, times] : by_place) sum += std::min(times, most);
  return sum;
}

std::string pass_text(const Drive& drive, const FoundPass& found) {
  return at_stretch(drive, found.pass.first) + ": it passes " +
         std::string(road::name(found.pass.kind)) + " (" + words_for(found.pass.source) + ")";
}

bool avoid_holds(const Drive& drive, const wish::Avoid& avoid, Claims& claims) {
  for (const FoundPass& found : drive.passes)
    if (!claims.hold(!road::meets(found.pass.kind, avoid.kind),
                     [&] { return pass_text(drive, found) + ", which the wish avoids"; }))
      return false;
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    const std::uint64_t runs = drive.roads.stretch(drive.stretches[i]).runs;
    if (!claims.hold((runs & road::with_special_forms(avoid.kind)) == 0, [&] {
          return at_stretch(drive, i) + ": it is " + std::string(road::name(avoid.kind)) +
                 ", which the wish avoids";
        }))
      return false;
  }
  return true;
}

bool hardness_holds(const Drive& drive, const Caps& caps, Claims& claims) {
  if (!drive.wish.level_given) return true;
  const int most = drive.wish.level + caps.hardness_above_level;
  for (const FoundPass& found : drive.passes) {
    const auto& wants = drive.wish.wants;
    const bool named = std::any_of(wants.begin(), wants.end(), [&](const Want& want) {
      return road::meets(found.pass.kind, want.kind);
    });
    const bool excused = named || road::is_of_choice(found.pass.kind);
    if (!claims.hold(excused || found.pass.hardness <= most, [&] {
          return pass_text(drive, found) + " of hardness " + std::to_string(found.pass.hardness) +
                 ", more than " + std::to_string(most);
        }))
      return false;
  }
  return true;
}

bool quiet_streets_hold(const Drive& drive, const Caps& caps, Claims& claims) {
  if (!drive.wish.through.empty()) return true;
  std::map<PieceId, int> times;
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    const road::Piece& piece = drive.roads.piece(drive.stretches[i]);
    if ((piece.flags & road::piece_flag::quiet) == 0) continue;
    const int driven = ++times[drive.stretches[i].piece()];
    if (!claims.hold(driven <= caps.quiet_passes, [&] {
          return at_stretch(drive, i) + ": this quiet street is driven " + std::to_string(driven) +
                 " times, more than " + std::to_string(caps.quiet_passes);
        }))
      return false;
  }
  return true;
}

/// Worth in milli-units of the passes that count for one "max" want.
std::int64_t worth(const Drive& drive, const Want& want, const Caps& caps) {
  std::vector<const FoundPass*> counting;
  for (const FoundPass& found : drive.passes)
    if (counts(found.pass, want)) counting.push_back(&found);
  std::sort(counting.begin(), counting.end(),
            [](const FoundPass* a, const FoundPass* b) { return a->pass.first < b->pass.first; });
  std::map<std::pair<PlaceId, Movement>, std::size_t> times;
  std::int64_t sum = 0;
  std::int64_t next_ms = 0;
  for (const FoundPass* found : counting) {
    const std::int64_t begins_ms =
        std::llround(1000 * drive.loop.stretches[found->pass.first].arrive_s.likely);
    if (begins_ms < next_ms) continue;
    const std::size_t before = times[{found->place, found->pass.movement}]++;
    if (before >= caps.repeat_worth.size()) continue;
    sum += caps.repeat_worth[before];
    next_ms = begins_ms + std::llround(1000 * caps.spacing_s);
  }
  return sum;
}

/// Whoever stops for a manoeuvre was asked to, and no more often than asked.
bool stops_are_wanted(const Drive& drive, Claims& claims) {
  for (const FoundPass& found : drive.passes) {
    if (found.pass.stop_s == 0) continue;
    const auto& wants = drive.wish.wants;
    const bool wanted = std::any_of(wants.begin(), wants.end(),
                                    [&](const Want& want) { return counts(found.pass, want); });
    if (!claims.hold(wanted,
                     [&] { return pass_text(drive, found) + ", which the wish doesn't ask for"; }))
      return false;
  }
  for (const wish::Met& met : drive.loop.met) {
    const bool stops = road::form_of(met.want.kind) == road::KindForm::manoeuvre;
    if (!claims.hold(!stops || !met.want.count || met.got <= *met.want.count, [&] {
          return at_loop(drive) + ": it stops " + std::to_string(met.got) + " times for " +
                 wish::write_want(met.want);
        }))
      return false;
  }
  return true;
}

std::int64_t value_of(const Drive& drive, const Caps& caps) {
  const auto is_max = [](const Want& want) { return !want.count; };
  const auto& wants = drive.wish.wants;
  const bool own_drive = !drive.wish.through.empty();
  if (own_drive || std::none_of(wants.begin(), wants.end(), is_max))
    return -std::llround(metres_twice(drive, 0));
  std::int64_t sum = -std::llround(metres_twice(drive, road::piece_flag::quiet));
  for (const Want& want : wants)
    if (is_max(want)) sum += worth(drive, want, caps);
  return sum;
}

}  // namespace

bool counts_hold(const Drive& drive, const Caps& caps, Claims& claims) {
  const auto& met = drive.loop.met;
  const auto& wants = drive.wish.wants;
  if (!claims.agree(at_loop(drive) + ", wants counted", std::to_string(met.size()),
                    std::to_string(wants.size())))
    return false;
  for (std::size_t i = 0; i < met.size(); ++i) {
    const std::string want = wish::write_want(wants[i]);
    if (!claims.agree(at_loop(drive) + ", want " + std::to_string(i), wish::write_want(met[i].want),
                      want) ||
        !claims.agree(at_loop(drive) + ", passes that count for " + want,
                      std::to_string(met[i].got), std::to_string(counted(drive, wants[i], caps))))
      return false;
  }
  return true;
}

bool limits_of_wish_hold(const Drive& drive, const Caps& caps, Claims& claims) {
  for (const wish::Avoid& avoid : drive.wish.avoids)
    if (!avoid_holds(drive, avoid, claims)) return false;
  return stops_are_wanted(drive, claims) && hardness_holds(drive, caps, claims) &&
         quiet_streets_hold(drive, caps, claims);
}

bool certificate_holds(const Drive& drive, const Caps& caps, Claims& claims) {
  const wish::Certificate& said = drive.loop.certificate;
  const std::string where = at_loop(drive) + ", certificate";
  const bool known =
      said.state == "best possible" || said.state == "within" || said.state == "searched";
  if (!claims.hold(known, [&] { return where + ": there is no state '" + said.state + "'"; }))
    return false;
  const bool bounded = said.bound && (said.state == "within" ? *said.bound >= said.value
                                                             : *said.bound == said.value);
  if (!claims.hold(said.state == "searched" || bounded,
                   [&] { return where + ": '" + said.state + "' doesn't follow from its bound"; }))
    return false;
  if (!claims.hold(said.left_out >= 0 && said.left_out <= said.candidates, [&] {
        return where + ": of " + std::to_string(said.candidates) + " candidates " +
               std::to_string(said.left_out) + " can't be left out";
      }))
    return false;
  return claims.agree(where + ", value", {static_cast<double>(said.value),
                                          static_cast<double>(value_of(drive, caps)), 1, ""});
}

}  // namespace loopwright::proof
